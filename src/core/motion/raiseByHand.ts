/** Raise [mm] beyond which a motion is at best tight and asks for a mechanical aid. */
export const RAISE_BY_HAND = 300;
