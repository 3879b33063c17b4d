/** What both joist functions say of their source and their limits. */
export const JOIST_SOURCE =
  'EN 1995-1-1 6.1.6, 6.1.7, 6.6, 7.2, tables 2.3, 3.1, 7.2, service class 1: 1.35 dead + 1.5 imposed + 1.5 point at ' +
  'kmod of the duration, 1.35 dead + 1.35 point at kmod permanent; ksys 1.1 only without a point load, kcr 0.67, ' +
  'deflection with shear at most span/300; EN 338 (C16 and C24 read in a quotation, the other grades and all shear ' +
  'moduli in a second-hand table). Lumber grades by allowable stress (NDS 3.3, 3.4, 4.3): dead + imposed + point at ' +
  'the load duration factor (permanent 0.9, long and medium 1, short 1.25), dead + point at 0.9; repetitive 1.15 only ' +
  'without a point load and at most 610 mm apart; deflection of imposed and point at most span/360 (IRC); design ' +
  'values of the NDS Supplement, tables 4A and 4B, read at second hand';

export const JOIST_VALIDITY =
  'one sound joist on two supports, span 5 to 35 depths; notches, holes, bearing, rot and vibration are not looked ' +
  'at, and the depth factor kh is left out; lumber dry, 2 to 4 in nominal';
