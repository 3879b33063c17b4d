import type { MeasureName, StageMeasures } from '../measures';
import { FURNITURE } from '../siteRemedies';
import { never, NO_TRIP, stageKind, type StageCap } from '../stageKind';
import { STAIR_CLEAR, STAIR_HEADROOM, STEP_GOING, STEP_RISE } from '../stairMeasures';
import { CLEAR_HEIGHT, FLOOR_SPACE, PRACTICE, range } from '../usualRanges';

const ENDS = ['footCeiling', 'footSpace', 'headCeiling', 'headSpace'] as const satisfies MeasureName[];

function cap(measures: StageMeasures): StageCap | undefined {
  const missing = ENDS.filter((name) => measures[name] === undefined);
  return missing.length === 0 ? undefined : { kind: 'stair ends not measured', missing };
}

/** From the first nosing to the last, along the pitch [mm], unless it was measured. */
function straight({ length, risers, rise, going }: StageMeasures): number | undefined {
  if (length !== undefined) return length;
  if (risers === undefined || rise === undefined || going === undefined) return undefined;
  return (risers - 1) * Math.hypot(rise, going);
}

function levelToLevel(measures: StageMeasures): number | undefined {
  const { risers, going } = measures;
  if (risers === undefined || going === undefined || cap(measures)) return undefined;
  return (risers - 1) * going;
}

/** A straight flight of a stair. */
export const FLIGHT = stageKind({
  role: 'flight',
  stair: 'flight',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    height: STAIR_HEADROOM,
    // The whole run is taped once, the rise and going of a step worked out from it.
    rise: { ...STEP_RISE, tape: 'shared by the risers' },
    going: { ...STEP_GOING, tape: 'shared by the risers' },
  },
  may: {
    risers: {
      usual: range(2, 36, 'Approved Document K 1.18: no more than 36 in a row, from memory'),
      tape: 'not taped',
      remedy: null,
    },
    // Its length is a straight between two turns.
    length: { of: 'end to end', usual: range(300, 15000, PRACTICE), tape: 'more helps', remedy: null },
    footCeiling: { usual: CLEAR_HEIGHT, tape: 'more helps', remedy: null },
    footSpace: { usual: FLOOR_SPACE, tape: 'more helps', remedy: FURNITURE },
    headCeiling: { usual: CLEAR_HEIGHT, tape: 'more helps', remedy: null },
    headSpace: { usual: FLOOR_SPACE, tape: 'more helps', remedy: FURNITURE },
    lowWidth: STAIR_CLEAR,
    lowHeight: { usual: range(100, 1200, PRACTICE), tape: 'more hinders', remedy: null },
  },
  worthAsking: ['headSpace', 'headCeiling', 'footSpace', 'footCeiling', 'risers'],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap,
  straight,
  levelToLevel,
  landingSpaces: never,
  trip: {
    ...NO_TRIP,
    needs: ['risers'],
    distance: ({ risers = 0, rise, going }) =>
      rise === undefined || going === undefined ? 0 : risers * Math.hypot(rise, going),
    rises: ({ risers = 0 }) => risers,
  },
  place: 'on the way',
  passedBy: 'the flight',
  seenBest: 'from the side',
  customerWord: 'run of stairs',
  otherWords: ['stair', 'stairs', 'staircase'],
});
