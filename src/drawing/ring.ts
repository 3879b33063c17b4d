import type { StepContact, StepMotion } from '../core/joint/walk/stepMotion';
import type { SolidPart } from '../core/joint/place/solid';
import type { DecidingFace } from '../core/motion/closest';
import type { Paper } from './paper';
import { nearestPlaces, type Points } from './plane';
import { clipped, sectionIn, type ViewPlane } from './section';

/** Building that stands upright: seen from above it keeps its outline. */
export const UPRIGHT: ReadonlySet<SolidPart> = new Set(['wall', 'facing wall', 'rail']);

/** What a picture from above shows of what decides, and what one from the side. */
const SEEN: Readonly<Record<Exclude<DecidingFace, 'anything'>, readonly ('above' | 'side')[]>> = {
  sides: ['above'],
  jambs: ['above'],
  'inner corner': ['above'],
  rail: ['above', 'side'],
  'far wall': ['above'],
  'foot wall': ['above', 'side'],
  'head wall': ['above', 'side'],
  head: ['side'],
  ceiling: ['side'],
  slope: ['side'],
  nosings: ['side'],
  'top nosing': ['side'],
  'stairwell edge': ['side'],
  'foot ceiling': ['side'],
  'head ceiling': ['side'],
  riser: ['side'],
};

/** Whether a picture from that side can show what a place is closest to. */
export const isSeenFrom = (from: 'above' | 'side', { face, part }: StepContact): boolean =>
  face === undefined || face === 'anything'
    ? UPRIGHT.has(part) === (from === 'above')
    : SEEN[face].includes(from);

/**
 * Rings what decides where it is nearest to a piece that is cut by the plane.
 * @returns whether it is ringed: not where the plane does not reach what decides, or the window does not
 */
export function ringInSection(
  paper: Paper,
  { deciding }: StepMotion,
  plane: ViewPlane,
  window: Points,
  outline: Points,
): boolean {
  const faces = deciding.flatMap((solid) => {
    const seen = clipped(sectionIn(plane, solid), window);
    return seen.length < 3 ? [] : [[...seen, seen[0] ?? [0, 0]] as Points];
  });
  const [at] = nearestPlaces(outline, faces);
  if (at) paper.mark(at.at);
  return at !== undefined;
}
