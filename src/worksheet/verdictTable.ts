import type { BuildVerdict } from '../core/route/buildVerdict';
import type { TableCell } from './description';

/** The columns of VERDICT, ADVISE and SURVEYS. */
export const VERDICT_COLUMNS = [
  'Build',
  'Verdict',
  'Clearance',
  'Step',
  'Stage',
  'Piece',
  'Pose',
  'Heaviest kg',
  'Carry',
  'Reason',
  'Caution',
] as const;

export const VERDICT_RESULT = {
  meaning: `a header row and one row a build: ${VERDICT_COLUMNS.join(', ')}; empty where nothing can be said`,
  unit: 'mm a side, kg',
} as const;

/** What stands behind every verdict, for the help. */
export const ROUTE_SOURCE =
  'the widest path over poses: of all chains of poses the one whose worst step is best; each stage by its own function (OPENING, CORNER, FLIGHT and the rest)';

export const ROUTE_MOTIONS =
  'each stage by the families of motion of its own function; between stages a pose changes only outdoors, in a room, on a landing, or in a passage with a Length, where the turning piece fits';

export const ROUTE_VALIDITY =
  'goes: worst case by the tape at least the allowance; tight: at least 0 as measured; no way found: not shown and not disproved; cannot go: proved even with the tape in its favour; not measured: a measure is missing or refused. Steps and a ramp: as wide as their Width all the way, level ground or the next row at both ends, open to the sky where Height says open or nothing; a door after steps stands at their last riser. Low width: on a side that is not known, up to Low height, all along; passed beside, above, or leaning over it; on a flight with measured ends not leaning, and above it under end ceilings that are nearer by as much as the piece is raised';

/** A build's verdict as a row of the table. */
export const verdictRow = (v: BuildVerdict): TableCell[] => [
  v.build,
  v.verdict,
  v.clearance ?? '',
  v.step ?? '',
  v.stage ?? '',
  v.piece,
  v.pose ?? '',
  v.heaviest ?? '',
  v.carry,
  v.reason,
  v.caution,
];
