import { runs, type ProfileLine, type ProfilePart } from './profile';
import { levelBox } from '../../src/core/motion/planScene';
import type { SceneBox } from '../../src/core/space/motion';

/** Thickness of floors, ceilings and walls as drawn [mm]. */
const THICK = 200;
/** Thickness of what stands for a plumb riser or the end of a sloping ceiling [mm]. */
const THIN = 1;

/**
 * A straight way as boxes: floors and ceilings level or aslant, plumb where one steps to the next, and the side walls of
 * each part. x along the way, y to the left, z up.
 */
export function profileScene(parts: readonly ProfilePart[]): SceneBox[] {
  const real = parts.filter((part) => part.to > part.from);
  const right = Math.min(...real.map((part) => part.right));
  const left = Math.max(...real.map((part) => part.left));
  const low = Math.min(...real.map((part) => Math.min(...part.floor))) - THICK;
  const high = Math.max(...real.map((part) => Math.max(...part.ceiling))) + THICK;
  const scene: SceneBox[] = [];
  const lines = (which: 'floor' | 'ceiling', side: -1 | 1): void => {
    const all = runs(real, which);
    all.forEach((line, i) => {
      scene.push(slab(line, right, left, side));
      const next = all[i + 1];
      if (!next || next.z0 === line.z1) return;
      // Plumb between two heights: on whichever side is solid there.
      const up = next.z0 > line.z1;
      const ahead = side < 0 === up;
      const x = line.x1;
      const from = ahead ? x : x - THIN;
      scene.push(
        levelBox(
          [from, right, Math.min(line.z1, next.z0) - (side < 0 ? THICK : 0)],
          [from + THIN, left, Math.max(line.z1, next.z0) + (side > 0 ? THICK : 0)],
        ),
      );
    });
  };
  lines('floor', -1);
  lines('ceiling', 1);
  for (const part of real) {
    scene.push(levelBox([part.from, part.right - THICK, low], [part.to, part.right, high]));
    scene.push(levelBox([part.from, part.left, low], [part.to, part.left + THICK, high]));
  }
  return scene;
}

/** A slab whose upper face (side -1) or lower face (side 1) is the line. */
function slab({ x0, x1, z0, z1 }: ProfileLine, right: number, left: number, side: -1 | 1): SceneBox {
  const angle = Math.atan2(z1 - z0, x1 - x0);
  const off = (side * THICK) / 2;
  return {
    centre: [
      (x0 + x1) / 2 - off * Math.sin(angle),
      (right + left) / 2,
      (z0 + z1) / 2 + off * Math.cos(angle),
    ],
    size: [Math.hypot(x1 - x0, z1 - z0), left - right, THICK],
    turn: [Math.cos(angle / 2), 0, -Math.sin(angle / 2), 0],
  };
}
