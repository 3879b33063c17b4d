import { entryAt } from '../lists/entryAt';
import { heightUnderLintel } from '../joint/place/rowContext';
import type { TurningSpace } from '../motion/turningSpace';
import { endLimits } from './armLimits';
import { armOf, type Arm } from './arms';
import { endOf, type FlightEnd } from './flightEnd';
import { stairJoints, turnBeyond } from './jointPlan';
import { lineLength, shortJoints } from './landingBesideFlights';
import { alone, type PartPlan, type PassageSource, type PassageSources, type PlannedLimit } from './partPlan';
import { bareFlight, type Planning } from './planning';
import { standsAlone, type ReadRow } from './reading';
import type { BookStage, LooseMeasures } from './stageBook';
import { straightLength } from './wayLength';

/** Risers of the longest flight that is counted through; with more it is longer than any piece. */
const MOST_COUNTED = 13;
/** A floor longer than any piece, and a ceiling above any [mm]. */
const AMPLE = 20000;

/**
 * A flight as parts: the floor at its first end, its two halves, and the floor at its second end. Level at both ends
 * it is solved as one; where a landing has an end, the piece comes from there laid along the pitch, and the halves
 * meet where it lies wholly on the flight.
 */
export function flightPlan(planning: Planning, i: number, stage: BookStage): PartPlan[] {
  const { reading, tapeCase, tape, lookUp } = planning;
  const first = endOf(planning, i, 'before');
  const second = endOf(planning, i, 'after');
  const bare = underLintel(planning, i, bareFlight(planning, stage).measures, [first, second]);
  const line: PlannedLimit = {
    length: lineLength(stage.measures, tapeCase, tape),
    cause: { kind: 'flight', length: lineShown(stage.measures), rows: [i, i] },
  };
  const half = (one: FlightEnd): Pick<PartPlan, 'sources' | 'laid'> =>
    one.onLanding
      ? { sources: [], laid: { flight: lookUp('flight', bare) } }
      : { sources: [[{ ...alone(lookUp('flight', { ...bare, ...endMeasures(one) })), steadyOnly: true }]] };
  const both = { ...bare, ...endMeasures(first), ...endMeasures(second) };
  const limits = { limitsBefore: [], limitsAfter: [] };
  const firstHalf: PartPlan = {
    row: i,
    ...half(first),
    ...limits,
    limitsBefore: besideLimits(planning, i, 'before', first),
    limitsAfter: [line],
    joints: [
      {
        parts: 2,
        sources: [
          ...wholeSources(planning, i, both, first, second),
          ...levelSources(planning, i, first, second),
        ],
      },
      ...shortJoints(planning, i + 1, 'first half'),
    ],
  };
  const turns = stairJoints(planning, i, 'after', lookUp('flight', bare));
  const beyond = turnBeyond(planning, i, 'after', lookUp('flight', bare));
  const secondHalf: PartPlan = {
    row: i,
    ...half(second),
    ...limits,
    limitsAfter: besideLimits(planning, i, 'after', second),
    joints: [
      // The second half, the floor at its end, and the row there.
      ...(turns.length > 0 ? [{ parts: 3, sources: [], solved: turns }] : []),
      ...(beyond ? [{ parts: beyond.row - i + 2, sources: [], solved: beyond.plans }] : []),
      ...shortJoints(planning, i + 1, 'second half'),
    ],
  };
  const floor = (one: FlightEnd, neighbour: ReadRow | undefined): PartPlan => ({
    row: i,
    sources: [],
    isFloor: true,
    floor: floorSpace(planning, i, one, neighbour),
    ...limits,
  });
  return [floor(first, reading[i - 1]), firstHalf, secondHalf, floor(second, reading[i + 1])];
}

/** Under a ceiling at its foot that begins there: steps and ramps. */
function underLintel(
  { reading }: Planning,
  i: number,
  measures: LooseMeasures,
  ends: readonly FlightEnd[],
): LooseMeasures {
  const row = entryAt(reading, i);
  if (!standsAlone(row)) return measures;
  const foot = ends.find(({ end }) => end === 'foot')?.ceiling;
  return {
    ...measures,
    height: heightUnderLintel({ ...measures, footCeiling: row.measures.footCeiling }, foot),
  };
}

const endMeasures = ({ end, ceiling, space, onLanding }: FlightEnd): LooseMeasures =>
  end === 'foot'
    ? { footCeiling: ceiling, footSpace: space, ...(onLanding ? { footOnLanding: true } : {}) }
    : { headCeiling: ceiling, headSpace: space, ...(onLanding ? { headOnLanding: true } : {}) };

function lineShown({ risers, rise = 0, going = 0 }: LooseMeasures): number | undefined {
  return risers === undefined ? undefined : (risers - 1) * Math.hypot(rise, going);
}

/** From one end to the other at once; shorter than the piece too, where the number of risers is known. */
function wholeSources(
  { tapeCase, tape, lookUp }: Planning,
  i: number,
  both: LooseMeasures,
  first: FlightEnd,
  second: FlightEnd,
): PassageSources[] {
  const onLanding = first.onLanding || second.onLanding;
  const { risers, going = 0 } = both;
  const off = tapeCase === 'worst' ? tape : 0;
  const reach = (count: number, { onLanding: landing, space = Infinity }: FlightEnd): number =>
    landing ? (count - 1) * going + space - 2 * off : Infinity;
  const of = (count: number): PassageSource => ({
    ...alone(lookUp('flight', { ...both, risers: count })),
    upToBefore: reach(count, first),
    upToAfter: reach(count, second),
    causeBefore: { kind: 'reach', length: reach(count, first), rows: [i - 1, i] },
    causeAfter: { kind: 'reach', length: reach(count, second), rows: [i, i + 1] },
  });
  if (risers !== undefined) return [[of(risers)]];
  // Without the risers it is at best a long flight, which the halves see to where a landing has an end.
  const long = onLanding ? [] : [alone(lookUp('flight', { ...both, risers: undefined }))];
  if (tapeCase !== 'worst') return long.length > 0 ? [long] : [];
  const counted: PassageSource[] = [];
  for (let count = 2; count <= MOST_COUNTED; count++) counted.push(of(count));
  return [[...counted, ...long]];
}

/**
 * A few steps are passed level, too, at the height of their head: over the lower ground by all that they rise, and so
 * through a door at their last riser while part of the piece is still over them. Whatever is over the lower ground is as
 * much higher than the piece, as far as the way goes straight on there.
 */
function levelSources(planning: Planning, i: number, first: FlightEnd, second: FlightEnd): PassageSources[] {
  const { reading, lookUp } = planning;
  const { row, measures, way } = entryAt(reading, i);
  const { width, height, rise = 0, risers = 0 } = measures;
  if (!standsAlone(entryAt(reading, i)) || width === undefined || height === undefined) return [];
  const lower = way === 'up' ? first : second;
  const { sections } = armOf(reading, i, way === 'up' ? 'before' : 'after');
  const over = Math.min(height, lower.ceiling ?? Infinity, ...sections.map((section) => section.height));
  const climb = rise * risers;
  // Narrower than any piece up to the height of the head: raised above that it passes the whole width.
  const above = { width, height: over, lowWidth: 1, lowHeight: climb };
  const toldAs = row.stage === 'ramp' ? 'ramp' : 'steps';
  return over > climb ? [[{ ...alone(lookUp('passage', above)), toldAs }]] : [];
}

/** The straight of a flight's level end up to where the way turns or is lower, counted from the stair. */
function besideLimits(
  planning: Planning,
  i: number,
  side: 'before' | 'after',
  end: FlightEnd,
): PlannedLimit[] {
  if (end.onLanding) return [];
  const { tapeCase, tape, reading } = planning;
  // A door at the last riser: the piece stands in it while it is still over the steps.
  if (end.space === 0 && standsAlone(entryAt(reading, i))) return [];
  const arm: Arm = armOf(reading, i, side);
  const [next] = arm.sections;
  if (!next) return endLimits(planning, i, arm, side).filter(({ cause }) => cause.kind === 'straight');
  // A door in the facing wall: level on the floor before it.
  const facing = arm.sections.find((section) => entryAt(reading, section.row).stage === 'door');
  if (!facing) return endLimits(planning, i, arm, side).filter(({ cause }) => cause.kind === 'straight');
  return [
    {
      length: straightLength(facing.at, tapeCase, tape),
      cause: {
        kind: 'straight',
        length: facing.at.open ? undefined : facing.at.known,
        rows: side === 'after' ? [i, facing.row] : [facing.row, i],
      },
    },
  ];
}

/** The floor at a flight's end, where there is room to change the pose. */
function floorSpace(
  { reading, tapeCase, tape }: Planning,
  i: number,
  end: FlightEnd,
  neighbour: ReadRow | undefined,
): TurningSpace | undefined {
  if (end.onLanding) return undefined;
  const { measures } = entryAt(reading, i);
  const off = tapeCase === 'worst' ? tape : 0;
  const along = (end.space ?? AMPLE) - off;
  const height = (end.ceiling ?? AMPLE) - off;
  if (neighbour?.stage === 'room') {
    // The stair ends somewhere at a wall of the room, along either side: the piece is turned over anywhere in it.
    const { length, width: other } = neighbour.measures;
    const across = length === undefined || other === undefined ? 0 : Math.min(length, other) - off;
    return along > 0 && height > 0 && across > 0 ? { along, across, height, eitherWay: true } : undefined;
  }
  const passage = neighbour?.stage === 'passage' ? neighbour.measures : undefined;
  const widths = [measures.width, measures.lowWidth, passage?.width, passage?.lowWidth];
  const width = Math.min(...widths.filter((value): value is number => value !== undefined));
  return along > 0 && height > 0 ? { along, across: width - off, height } : undefined;
}
