import { ceilingOverLanding } from '../geometry/landingModel';
import { entryAt } from '../lists/entryAt';
import { floorCeiling, roleOf, turnArms } from '../stages/kinds';
import { floorBetween, ownLength } from './arms';
import type { Planning } from './planning';
import { ceilingAt, endBeside, isLanding, spaceAt, type StairEnd } from './reading';
import { straightLength } from './wayLength';

/** What is at one end of a flight, as a flight is solved with it. */
export interface FlightEnd {
  readonly end: StairEnd;
  /** A landing, measured by its own row: what is on the flight need not come level there. */
  readonly onLanding: boolean;
  /** Flat ceiling and floor up to the facing wall there [mm]; undefined: they limit nothing. */
  readonly ceiling: number | undefined;
  readonly space: number | undefined;
}

/** What is at an end of flight i, by the row there. */
export function endOf(planning: Planning, i: number, side: 'before' | 'after'): FlightEnd {
  const { reading, tapeCase, tape } = planning;
  const { way, measures } = entryAt(reading, i);
  const end = endBeside(way, side);
  const k = side === 'before' ? i - 1 : i + 1;
  const neighbour = reading[k];
  const worst = tapeCase === 'worst';
  const given = ceilingAt(measures, end);
  const headroom = measures.height;
  const least = (...values: (number | undefined)[]): number | undefined => {
    const known = values.filter((value): value is number => value !== undefined);
    return known.length > 0 ? Math.min(...known) : undefined;
  };
  if (neighbour && isLanding(neighbour.stage)) {
    const m = neighbour.measures;
    const overLanding = ceilingOverLanding({ landingCeiling: m.ceiling, headroom: m.height });
    const depth = neighbour.stage === 'half landing' ? m.depth : landingIsBelow(end) ? m.widthOut : m.width;
    return { end, onLanding: true, ceiling: least(given, overLanding), space: depth };
  }
  if (neighbour?.stage === 'winder') return { end, onLanding: true, ceiling: undefined, space: 0 };
  const space = spaceAt(measures, end);
  // Over one floor the least of the ceilings given holds; not given, it may be as low as the headroom.
  const ceilingOf = (other: number | undefined): number | undefined =>
    given === undefined && worst ? least(headroom, other) : least(given, other);
  if (!neighbour) return { end, onLanding: false, ceiling: ceilingOf(undefined), space };
  const { stage, measures: m } = neighbour;
  const straight =
    side === 'before'
      ? floorBetween(neighbour, entryAt(reading, i))
      : floorBetween(entryAt(reading, i), neighbour);
  const open = (value: number): number | undefined => (value === Infinity ? undefined : value);
  const ceilingAbove = floorCeiling(stage);
  const own = ceilingAbove && m[ceilingAbove];
  const arms = turnArms(stage);
  if (arms) {
    // Both measures are there: the space to the facing wall is the straight and the turn's width.
    const across = arms.eitherWay || side === 'before' ? arms.in : arms.out;
    const floor = space ?? open(straightLength(straight, tapeCase, tape) + (m[across.width] ?? 0));
    return { end, onLanding: false, ceiling: ceilingOf(own), space: floor };
  }
  switch (roleOf(stage)) {
    case 'straight':
      return {
        end,
        onLanding: false,
        ceiling: ceilingOf(own),
        // The passage is the floor that the space measures: never more than the less of the two.
        space: least(space, open(untaped(straightLength(ownLength(reading, k), tapeCase, tape)))),
      };
    case 'room': {
      const { length = Infinity, width = Infinity } = m;
      const depth = worst ? Math.min(length, width) : Math.max(length, width);
      const most = Math.max(length, width);
      return {
        end,
        onLanding: false,
        ceiling: ceilingOf(own),
        space: space === undefined ? open(depth) : Math.min(space, most),
      };
    }
    default:
      return {
        end,
        onLanding: false,
        ceiling: ceilingOf(undefined),
        space: space ?? (worst ? 0 : undefined),
      };
  }
  function untaped(value: number): number {
    // The book takes the tape off again.
    return worst && value > 0 ? value + tape : value;
  }
}

/** The flight's foot is on the landing at the top of the flight below, whose upper side looks across the lower width. */
const landingIsBelow = (end: StairEnd): boolean => end === 'head';
