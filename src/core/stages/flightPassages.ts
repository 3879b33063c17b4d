import { rectangleThroughOpening } from '../geometry/rectangleThroughOpening';
import type { PieceSize, Pose } from '../measures/piece';
import { clearSquareToPitch, type FlightMeasures } from './flight';
import { ALL_HELD, heldSizes, poseOfHeld, type Held } from './held';
import { openingAtMost } from './openingAtMost';
import type { StagePassage } from './stagePassage';

/**
 * The ways up the straight part of a flight, by how the piece is held level before and after it: laid along
 * the pitch, its side along the way tilted with the stair; leaning across the pitch, which needs room to lean
 * at both ends; or kept upright, when its lower edge rests on the line of nosings at one end only:
 * upright + along tan(pitch) <= headroom.
 *
 * Model: as `flightFit`; the plane square to the pitch through a nosing is an opening of width x headroom
 * cos(pitch) that the piece's centre has to cross, which gives the proved bound.
 * @source Carver's condition (Wetzel, Mathematics Magazine 73, 2000, 204-211); trigonometry of the pitch
 */
export function flightPassages(measures: FlightMeasures, piece: PieceSize): StagePassage[] {
  const { width, headroom, rise, going } = measures;
  const channel = clearSquareToPitch(measures);
  const proved = openingAtMost({ width, height: channel }, piece);
  const bound = proved.bound.replace('the opening', 'the clear way up the stair');
  const tangent = rise / going;
  const passages: StagePassage[] = [];
  const add = (held: Held, clearance: number, pose: Pose, critical: string, turningRoom = false): void => {
    const answer = { clearance, atMost: proved.atMost, bound, pose, critical };
    passages.push({ from: held, to: held, answer, ...(turningRoom ? { needsTurningRoom: true } : {}) });
  };
  const between = `between the sides of the flight, ${Math.round(width)} mm apart`;
  const under = `under the headroom of ${Math.round(headroom)} mm`;

  for (const held of ALL_HELD) {
    const { along, across, upright } = heldSizes(piece, held);
    const byWidth = (width - across) / 2;
    const alongPitch = (channel - upright) / 2;
    const plumb = (headroom - upright - along * tangent) / (2 * (1 + tangent));
    const byHeight = Math.max(alongPitch, plumb);
    const floor = -Math.max(across, upright) / 2;
    // A piece laid along the pitch is tilted with the stair and keeps its trade name, unless it stands on end.
    const pose = held[1] === 'L' && alongPitch > plumb ? 'tilted' : poseOfHeld(held);
    const level = Math.max(Math.min(byWidth, byHeight), floor);
    add(held, level, pose, byWidth <= byHeight ? between : under);
    if (held[0] !== 'L') continue;
    const leaning = rectangleThroughOpening(width, channel, across, upright);
    if (leaning.clearance > level && leaning.angle > 0) {
      const degrees = Math.round((leaning.angle * 180) / Math.PI);
      add(held, leaning.clearance, 'leaning', `leaning ${degrees} degrees on the flight`, true);
    }
  }
  return passages;
}
