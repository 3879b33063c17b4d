// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { cos, sin } = Math;

/**
 * The directions of a box's length, breadth and thickness, one after the other, for a unit quaternion
 * [w, x, y, z].
 * @param axes nine numbers to be filled: x, y and z of each
 */
export function fillAxesOfTurn(axes: Float64Array, w: number, x: number, y: number, z: number): void {
  axes[0] = 1 - 2 * (y * y + z * z);
  axes[1] = 2 * (x * y + w * z);
  axes[2] = 2 * (x * z - w * y);
  axes[3] = 2 * (x * y - w * z);
  axes[4] = 1 - 2 * (x * x + z * z);
  axes[5] = 2 * (y * z + w * x);
  axes[6] = 2 * (x * z + w * y);
  axes[7] = 2 * (y * z - w * x);
  axes[8] = 1 - 2 * (x * x + y * y);
}

/**
 * The same for a box whose length points so far round in plan (yaw), rises so far (tilt), and that is leaned so
 * far about its length [rad].
 */
export function fillAxesOfYawTiltLean(axes: Float64Array, yaw: number, tilt: number, lean: number): void {
  const cy = cos(yaw);
  const sy = sin(yaw);
  const ct = cos(tilt);
  const st = sin(tilt);
  const cl = cos(lean);
  const sl = sin(lean);
  axes[0] = ct * cy;
  axes[1] = ct * sy;
  axes[2] = st;
  axes[3] = -cl * sy - sl * st * cy;
  axes[4] = cl * cy - sl * st * sy;
  axes[5] = sl * ct;
  axes[6] = sl * sy - cl * st * cy;
  axes[7] = -sl * cy - cl * st * sy;
  axes[8] = cl * ct;
}
