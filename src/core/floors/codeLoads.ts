import { STANDARD_GRAVITY } from '../measures/gravity';
import { KG_PER_POUND } from '../measures/readMass';

/** The codes held here. EN: recommended values; UK: its National Annex; US: IRC for houses, ASCE 7 else. */
export const CODES = ['EN', 'UK', 'US'] as const;
/** A code held here. */
export type Code = (typeof CODES)[number];

/** The uses of a floor for which the codes are held. */
export const USES = ['dwelling', 'sleeping room', 'billiard room', 'stairs'] as const;
/** A use of a floor. */
export type Use = (typeof USES)[number];

/** One value of a code. `status` says whether we read it or recall it. */
export interface CodeValue {
  /** [kN/m2] or [kN] */
  readonly value: number;
  readonly clause: string;
  readonly status: 'read in a quotation' | 'from memory';
}

/** What a code asks of a floor of one use: a load all over it, and a concentrated one. */
export interface CodeEntry {
  readonly area: CodeValue;
  /** Absent where the code, as held here, gives no concentrated load. */
  readonly point?: CodeValue;
}

/** 1 ft = 0.3048 m exactly: international yard and pound agreement, 1959. */
const M2_PER_FT2 = 0.3048 ** 2;
const KN_PER_LBF = (KG_PER_POUND * STANDARD_GRAVITY) / 1000;

/** Pounds a square foot to kN/m2. */
const psf = (pounds: number): number => (pounds * KN_PER_LBF) / M2_PER_FT2;

const memory = (value: number, clause: string): CodeValue => ({ value, clause, status: 'from memory' });
const read = (value: number, clause: string): CodeValue => ({
  value,
  clause,
  status: 'read in a quotation',
});

const EN_A = 'EN 1991-1-1 table 6.2, category A, recommended';
const UK_A1 = 'UK National Annex to EN 1991-1-1, table NA.3, A1 and its stairs';
const UK_A2 = 'UK National Annex to EN 1991-1-1, table NA.3, A1 and A2';
const UK_A4 = 'UK National Annex to EN 1991-1-1, table NA.3, A4 billiard and snooker rooms';
const IRC = 'IRC R301.5';

/**
 * Imposed loads of floors by code and use. They are for people and furniture: heavy equipment is not covered by them and
 * is checked on its own (EN 1991-1-1 section 6). The British 2.0 kN/m2 and 2.7 kN of a billiard room were read in a list
 * after the standard before it (BS 6399-1, type 2 occupancy), the annex's own table was not. EN has no billiard room of its own: a national annex decides.
 */
export const CODE_LOADS: Readonly<Record<Code, Readonly<Partial<Record<Use, CodeEntry>>>>> = {
  EN: {
    dwelling: { area: memory(2, `${EN_A}, floors`), point: memory(2, `${EN_A}, floors`) },
    'sleeping room': { area: memory(2, `${EN_A}, floors`), point: memory(2, `${EN_A}, floors`) },
    stairs: { area: memory(2, `${EN_A}, stairs`), point: memory(2, `${EN_A}, stairs`) },
  },
  UK: {
    dwelling: { area: memory(1.5, UK_A1), point: memory(2, UK_A1) },
    'sleeping room': { area: memory(1.5, UK_A2), point: memory(2, UK_A2) },
    'billiard room': { area: memory(2, UK_A4), point: memory(2.7, UK_A4) },
    stairs: { area: memory(1.5, UK_A1), point: memory(2, UK_A1) },
  },
  US: {
    dwelling: { area: read(psf(40), `${IRC}, rooms: 40 psf`) },
    'sleeping room': { area: read(psf(30), `${IRC}, sleeping rooms: 30 psf`) },
    'billiard room': { area: memory(psf(75), 'ASCE 7 table 4.3-1, poolrooms: 75 psf') },
    stairs: {
      area: read(psf(40), `${IRC}, stairs: 40 psf`),
      point: read(300 * KN_PER_LBF, `${IRC}, a tread: 300 lb on 2 in x 2 in`),
    },
  },
};
