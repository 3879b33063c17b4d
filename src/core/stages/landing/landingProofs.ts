import { ceilingOverLanding } from '../../geometry/landingModel';
import type { StairsAtMost } from '../../geometry/proofs/quarterLandingCutBlocks';

/** On a landing the proof stays at least so far from the motion [mm a side], tape included (measured, 32 landings). */
export const LANDING_GAP = 40;

interface TapedStair {
  readonly height: number;
  readonly rise: number;
  readonly going: number;
  readonly ceiling?: number | undefined;
  readonly lowerOpen?: boolean | undefined;
}

/** The stairs about a landing, for every steepness that the tape allows, in parts that are proved one by one. */
export function stairsWithin(sets: readonly [TapedStair, ...TapedStair[]]): StairsAtMost[] {
  const { height, ceiling, lowerOpen = false } = sets[0];
  const rise = Math.max(...sets.map((set) => set.rise));
  return steepness(sets).map((slope) => ({
    headroom: height,
    rise,
    slope,
    landingCeiling: ceilingOverLanding({ landingCeiling: ceiling, headroom: height }),
    lowerOpen,
  }));
}

/** Every steepness that rise and going can have within the tape, in two parts. */
function steepness(sets: readonly TapedStair[]): [number, number][] {
  const slopes = sets.map((set) => set.rise / set.going);
  const [least, most] = [Math.min(...slopes), Math.max(...slopes)];
  if (least === most) return [[least, most]];
  const middle = (least + most) / 2;
  return [
    [least, middle],
    [middle, most],
  ];
}

/** A ceiling that was not measured is the headroom by the model of the stairs; whoever reads the proof must know. */
export const ceilingKnown = ({ ceiling }: TapedStair): 'ceiling measured' | 'ceiling as the headroom' =>
  ceiling === undefined ? 'ceiling as the headroom' : 'ceiling measured';
