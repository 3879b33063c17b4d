/** How far outdoors the piece is taken up and set down [mm]: clear of the wall it comes from. */
export const GROUND_AWAY = 1500;
