import { boxInBoxAtMost } from '../geometry/proofs/boxInBoxAtMost';
import { centreCutBlocks } from '../geometry/proofs/centreCutAtMost';
import { halfLandingCutBlocks } from '../geometry/proofs/halfLandingCutAtMost';
import { quarterLandingCutBlocks, type StairsAtMost } from '../geometry/proofs/quarterLandingCutAtMost';
import { yawCutBlocks } from '../geometry/proofs/yawCutAtMost';
import { corner } from '../stages/corner/corner';
import type { PieceSize } from '../measures/piece';
import type { StageMeasures, StageName } from '../survey/table/stageMeasures';
import { tapedMeasures } from './tapeCase';

/** On a landing the proof stays at least so far from the motion [mm a side], tape included (measured, 32 landings). */
const LANDING_GAP = 40;

/**
 * The proofs that take longer than a passage is worth, for a piece that is not shown to pass and that the quick
 * bounds do not refuse.
 * @param measures as taped; how they can err for the piece is seen to here
 * @param tape how far off a measure may be [mm]
 * @param piece as small as the tape allows
 * @param shown greatest clearance [mm a side] of a motion as measured; what is nearly shown to pass is not tried
 * @returns the condition that fails, in words; undefined where nothing is proved
 */
export function deepProof(
  stage: StageName,
  measures: StageMeasures,
  tape: number,
  piece: PieceSize,
  shown = -Infinity,
): string | undefined {
  if (shown > -LANDING_GAP && (stage === 'quarter landing' || stage === 'half landing')) return undefined;
  const sets = tapedMeasures(measures, tape, 'best');
  const m = sets[0]!;
  switch (stage) {
    case 'corner':
      return cornerProof(m, piece);
    case 'room':
      return boxInBoxAtMost([m.length!, m.width!, m.height!], piece) < 0
        ? 'it fits in the room in no attitude'
        : undefined;
    case 'quarter landing':
      if ((m.overRail ?? 0) > 0) return undefined;
      return steepness(sets).every((slope) =>
        quarterLandingCutBlocks(
          { widthIn: m.width!, widthOut: m.widthOut!, ...stairsOf(sets, slope) },
          piece,
        ),
      )
        ? `its middle cannot cross the landing from the inner corner to the outer walls, ${howeverTurned(m)}`
        : undefined;
    case 'half landing': {
      if ((m.overRail ?? 0) > 0) return undefined;
      const least = tapedMeasures(measures, tape, 'worst')[0]!;
      const spine = [m.width!, least.width! + least.well!] as const;
      return steepness(sets).every((slope) =>
        halfLandingCutBlocks(
          { flightWidth: m.width!, well: m.well!, landingDepth: m.depth!, spine, ...stairsOf(sets, slope) },
          piece,
        ),
      )
        ? `its middle cannot cross the landing from the end of the spine to the outer walls, ${howeverTurned(m)}`
        : undefined;
    }
    default:
      return undefined;
  }
}

function cornerProof(m: StageMeasures, piece: PieceSize): string | undefined {
  const turn = m.turn ?? 90;
  if (piece.length > m.height! && yawCutBlocks(m.width!, m.widthOut!, m.height!, turn, piece))
    return 'under this ceiling it cannot stand up, and at one angle on either way round it stands nowhere';
  const room = { widthIn: m.width!, widthOut: m.widthOut!, ceiling: m.height!, turn };
  // What has a motion with the tape for it is blocked by nothing, and looking for that is quicker.
  if (corner(room, piece).clearance >= 0) return undefined;
  return centreCutBlocks(room, piece)
    ? 'its middle cannot cross from the inner corner to the outer walls, however it is turned'
    : undefined;
}

// A ceiling that was not measured is the headroom by the model of the stairs; whoever reads the proof must know.
const howeverTurned = ({ ceiling }: StageMeasures): string =>
  ceiling === undefined
    ? 'however it is turned, the ceiling there being no higher than the headroom'
    : 'however it is turned';

/** Every steepness that rise and going can have within the tape, in two parts that are proved one by one. */
function steepness(sets: readonly StageMeasures[]): [number, number][] {
  const slopes = sets.map((set) => set.rise! / set.going!);
  const [least, most] = [Math.min(...slopes), Math.max(...slopes)];
  if (least === most) return [[least, most]];
  const middle = (least + most) / 2;
  return [
    [least, middle],
    [middle, most],
  ];
}

function stairsOf(sets: readonly StageMeasures[], slope: readonly [number, number]): StairsAtMost {
  const { height, ceiling } = sets[0]!;
  return {
    headroom: height!,
    rise: Math.max(...sets.map((set) => set.rise!)),
    slope,
    landingCeiling: ceiling ?? height!,
  };
}
