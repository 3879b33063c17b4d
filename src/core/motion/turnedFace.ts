/** A face turned about the axis square to it until its height just meets a ceiling. */
export interface TurnedFace {
  /** Its length in plan [mm]. */
  readonly plan: number;
  /** How far it is turned out of level [rad]. */
  readonly tilt: number;
}

/**
 * A face u x v (v upright when level) turned so that its height u sin t + v cos t is `height`, less than its
 * diagonal and at least v. Between level and there the plan u cos t + v sin t is an arch, so of the attitudes
 * that fit under the height either level or this one is narrowest. Undefined when it cannot be so turned.
 * @source trigonometry of the turned rectangle
 * @param u side of the face [mm]
 * @param v its other side, upright when level [mm]
 * @param height [mm]
 * @example turnedFace(1000, 0, 500)?.plan // 866.03 mm, tilted by pi / 6
 */
export function turnedFace(u: number, v: number, height: number): TurnedFace | undefined {
  const diagonal = Math.hypot(u, v);
  if (v > height || diagonal < height || diagonal === 0) return undefined;
  const tilt = Math.asin(Math.min(1, height / diagonal)) - Math.atan2(v, u);
  if (!(tilt > 0)) return undefined;
  return { plan: u * Math.cos(tilt) + v * Math.sin(tilt), tilt };
}
