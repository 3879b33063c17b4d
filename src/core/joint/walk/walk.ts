import { entryAt } from '../../lists/entryAt';
import type { PieceSize, Pose } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude, SceneBox } from '../../space/motion';
import type { JointRow, RowsAsOne } from '../jointRow';
import type { PlacedRoute, PlacedRow } from '../place/placedRoute';
import { carriedSizes, type Carriage } from './carriage';
import { Carrier, type Stretch } from './carrier';

/** What the chain does with the piece at one row. */
export interface WalkStep {
  readonly enters: Hold;
  readonly from: Hold;
  readonly to: Hold;
  readonly leaves: Hold;
  /** The pose in which it passes the row: tilted and leaning ones are drawn so. */
  readonly pose: Pose;
  /** Clearance [mm a side] of that passage by itself: a tilted one is tilted as suits it. */
  readonly clearance?: number | undefined;
  /** How high that passage raises it at most [mm]. */
  readonly raise?: number | undefined;
  /** The row is passed together with others: where it leads straight on the piece is level in it, or as it comes. */
  readonly jointly?: boolean;
  /** The rows from this one on that are passed as one space, as that was solved. */
  readonly asOne?: WalkBlock | undefined;
}

/** Rows that are passed as one space, between places where the piece rests. */
export interface WalkBlock extends RowsAsOne {
  readonly from: Hold;
  readonly to: Hold;
  readonly pose: Pose;
  /** What it leaves [mm a side]. */
  readonly clearance: number;
}

/** What could not be drawn, and where. */
export interface NotDrawn {
  readonly row: number;
  readonly what:
    'start' | 'pose change' | 'level' | 'flight' | 'landing' | 'winder' | 'into the lift' | 'end';
}

/** The drawn motion is made for so much more than it is shown free for [mm]. */
export const DRAWN = 0.4;
/** Kept off the floor [mm]. */
export const OFF = 0.3;
/** Kept off planes between rows [mm]. */
export const GAP = 1;
/** A place to stand in is at most so long [mm]. */
export const STATION = 500;

/** A piece on its way through the scene of a route: its motion so far, how it is carried now, and where it stands. */
export class Walk {
  readonly carrier: Carrier;
  /** Padding for which the motion is drawn [mm a side]. */
  readonly drawn: number;
  carriage: Carriage;
  /** The placed row that is walked in. */
  at = 0;
  /** Since this placed row nothing was kept. */
  since = 0;
  /** The turn that was passed last together with a stair. */
  turned = -1;
  /** The stair that the piece was taken on to from a turn before it. */
  onto = -1;
  /** From a turn it has come on to the stair behind it. */
  onStair = false;
  /** It still stands before a turn at the end of the stair that it is to be taken on to. */
  behind = false;
  /** It lies along a flight with no room to be level before the next turn. */
  lying = false;
  /** Motions round landings, by placed row. */
  readonly landings = new Map<number, KeyAttitude[]>();

  /**
   * @param route the scene, of rows as they are walked
   * @param rows the same rows as they were given
   * @param padding for which every move is to be free [mm a side]
   */
  constructor(
    readonly route: PlacedRoute,
    readonly rows: readonly JointRow[],
    readonly steps: readonly WalkStep[],
    readonly piece: PieceSize,
    padding: number,
  ) {
    this.carrier = new Carrier(route, piece, padding);
    this.drawn = padding + DRAWN;
    this.carriage = { hold: steps[0]?.enters ?? 'LB', yaw: 0 };
  }

  rowAt(i: number): PlacedRow {
    return entryAt(this.route.rows, i);
  }

  /** The rows that moves from where the piece stands to row i may touch. */
  stretchOf(i: number): Stretch {
    const first = this.rowAt(Math.min(this.since, i)).row;
    return { from: first, to: this.rowAt(i).row };
  }

  /** What stands there. */
  boxesOf(i: number): SceneBox[] {
    return this.carrier.solids(this.stretchOf(i)).map(({ box }) => box);
  }

  /** Length along the way [mm] when it is held so. */
  alongFor(hold: Hold): number {
    const { p, q } = carriedSizes(this.piece, this.carriage, this.drawn);
    return this.carriage.turned !== undefined || hold === this.carriage.hold ? p : q;
  }

  /** Height of the floor under the piece as it is carried now [mm]. */
  floorHere(): number {
    const { height } = carriedSizes(this.piece, this.carriage, this.drawn);
    return this.carrier.last.at[2] - height / 2 - OFF;
  }

  /** What puts everything back to how it is now. */
  restorer(): () => void {
    const kept = this.carrier.keys.slice();
    const { carriage, at, since, turned, onto, onStair, behind, lying } = this;
    return () => {
      this.carrier.keys.splice(0, Infinity, ...kept);
      Object.assign(this, { carriage, at, since, turned, onto, onStair, behind, lying });
    };
  }
}
