import { kindOf } from '../../stages/kinds';
import { radians } from '../../measures/angle';
import type { JointRow } from '../jointRow';
import { buildCorner } from './buildCorner';
import { buildFlight } from './buildFlight';
import { buildHalfLanding, buildQuarterLanding } from './buildLanding';
import { buildLift } from './buildLift';
import { buildRoom } from './buildRoom';
import { buildDoorIntoPassage, buildDoorOutOfPassage } from './buildSideDoor';
import { buildStraight } from './buildStraight';
import { WALL_NOT_GIVEN } from '../../stages/usualRanges';
import { treadsInTurn } from '../../stages/winder/winder';
import { buildWinder } from './buildWinder';
import { walkedBack, type BuiltRow } from './builtRow';
import { ceilingWith, endsOf, flightCeilings, floorBeside, leadsIn, runOf } from './rowContext';
import { ceilingOverLanding } from '../../geometry/landingModel';

/** A row as it is built, and how it has to be turned over for its hand. */
export interface HandedRow {
  readonly built: BuiltRow;
  /** Built the other way round than its hand asks: to be mirrored in y. */
  readonly mirrored: boolean;
  /** Its own coordinates run against the way: a stair that is walked down, a door that leads out of its passage. */
  readonly back: boolean;
}

/** Sides of a flight that stand; the others are a landing's to build, up to its handrail. */
export interface FlightSides {
  readonly walls: 'both' | 'left' | 'right' | 'none';
}

/**
 * Builds one row among its neighbours, each as its function describes it. A measure that the row needs and does not
 * have is taken for 0; the caller sees to that.
 */
export function buildRow(
  row: JointRow,
  before: JointRow | undefined,
  after: JointRow | undefined,
  sides: FlightSides = { walls: 'both' },
): HandedRow {
  const m = row.measures;
  const width = m.width ?? 0;
  const height = m.height ?? 0;
  const toTheRight = row.hand === 'right';
  const down = row.way === 'down';
  const straight = (built: BuiltRow): HandedRow => ({ built, mirrored: false, back: false });
  switch (row.stage) {
    case 'door':
      return straight(buildStraight({ length: m.wall ?? WALL_NOT_GIVEN, width, height }));
    case 'passage': {
      const length = m.length ?? 0;
      return straight(
        buildStraight({
          length,
          width,
          height: ceilingWith(height, before, after),
          ...flightCeilings(length, before, after),
        }),
      );
    }
    case 'steps':
    case 'ramp': {
      const measures = kindOf(row.stage).solvedAsFlight?.(m) ?? m;
      return buildRow({ ...row, stage: 'flight', measures }, before, after, sides);
    }
    case 'corner':
      return {
        built: buildCorner({
          widthIn: width,
          widthOut: m.widthOut ?? 0,
          height: ceilingWith(height, before, after),
          turn: radians(m.turn ?? 90),
          run: runOf(row, after),
        }),
        mirrored: toTheRight,
        back: false,
      };
    case 'side door': {
      const shape = {
        doorWidth: width,
        doorHeight: height,
        wall: m.wall ?? WALL_NOT_GIVEN,
        passageWidth: m.widthOut ?? 0,
        ceiling: ceilingWith(m.ceiling ?? height, before, after),
        deadEnd: m.depth,
        run: runOf(row, after),
      };
      return (row.into ?? leadsIn(row, before))
        ? { built: buildDoorIntoPassage(shape), mirrored: toTheRight, back: false }
        : { built: buildDoorOutOfPassage(shape), mirrored: !toTheRight, back: true };
    }
    case 'flight': {
      const ends = endsOf(row);
      const sideOfEnd = (end: 'foot' | 'head') => (ends.after === end ? 'after' : 'before');
      const atFoot = ends.before === 'foot' ? before : after;
      const atHead = ends.before === 'head' ? before : after;
      const footFloor = floorBeside(row, 'foot', atFoot, sideOfEnd('foot'));
      const level = atFoot !== undefined && (atFoot.stage === 'passage' || atFoot.stage === 'room');
      const built = buildFlight({
        width,
        headroom: height,
        rise: m.rise ?? 0,
        going: m.going ?? 0,
        risers: m.risers ?? 1,
        footCeiling: m.footCeiling,
        footFloor,
        headFloor: floorBeside(row, 'head', atHead, sideOfEnd('head')),
        headCeiling: m.headCeiling,
        floorBefore: footFloor > 0 ? footFloor : level ? (atFoot.measures.length ?? 0) : 0,
        footWall: atFoot === undefined && footFloor > 0,
        headWall: atHead === undefined && (m.headSpace ?? 0) > 0,
        walls: sides.walls,
      });
      return { built: down ? walkedBack(built) : built, mirrored: false, back: down };
    }
    case 'quarter landing': {
      const built = buildQuarterLanding({
        widthIn: width,
        widthOut: m.widthOut ?? 0,
        ceiling: ceilingOverLanding({ landingCeiling: m.ceiling, headroom: height }),
      });
      return { built: down ? walkedBack(built) : built, mirrored: down !== toTheRight, back: down };
    }
    case 'half landing': {
      const built = buildHalfLanding({
        flightWidth: width,
        well: m.well ?? 0,
        depth: m.depth ?? 0,
        ceiling: ceilingOverLanding({ landingCeiling: m.ceiling, headroom: height }),
        spine: !(m.overRail !== undefined && m.overRail > 0),
      });
      return { built: down ? walkedBack(built) : built, mirrored: down !== toTheRight, back: down };
    }
    case 'winder': {
      const turn = m.turn ?? 90;
      const built = buildWinder({
        width,
        headroom: height,
        turn: radians(turn),
        rise: m.rise ?? 0,
        going: m.going ?? 0,
        treads: m.treads ?? treadsInTurn(radians(turn)),
        widthOut: m.widthOut ?? width,
      });
      return { built: down ? walkedBack(built) : built, mirrored: down !== toTheRight, back: down };
    }
    case 'lift':
      return straight(
        buildLift({
          doorWidth: width,
          doorHeight: height,
          carWidth: m.widthOut ?? 0,
          carDepth: m.depth ?? 0,
          carHeight: m.ceiling ?? height,
          goesOn: after !== undefined,
        }),
      );
    case 'room': {
      const length = m.length ?? 0;
      return straight(
        buildRoom({
          length,
          width,
          height: ceilingWith(height, before, after),
          leaves: after === undefined ? 'nowhere' : (row.hand ?? 'across'),
          ...flightCeilings(length, before, row.hand === undefined ? after : undefined),
        }),
      );
    }
  }
}
