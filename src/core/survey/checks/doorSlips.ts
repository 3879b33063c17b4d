import { RIGHT_ANGLE } from '../../measures/angle';
import { doorClear } from '../../measures/doorClear';
import { kindOf, type StageName } from '../../stages/kinds';
import type { StageRow } from '../table/stageRow';
import type { RowProblem } from './surveyProblem';

/** Widths of standard door leaves [mm] and their thickness: BS 4787, from memory. */
const STANDARD_LEAVES = [610, 686, 762, 838] as const;
const LEAF_THICKNESS = 35;
/** How far a stop stands into the opening [mm]: common practice, no source. */
const STOP = 12;

/** The leaves are 24, 27, 30 and 33 in rounded to the mm. */
const ROUNDING = 0.5;

/** A door's width that is a standard leaf's: the clear opening is narrower by the stop and the open leaf. */
export function doorLeafSlips(
  { measures, rowIndex, clear: measuredClear }: StageRow,
  stage: StageName,
): RowProblem[] {
  const { width } = measures;
  if (width === undefined || !kindOf(stage).doorLeaf || measuredClear) return [];
  const leaf = STANDARD_LEAVES.find((standard) => Math.abs(width - standard) <= ROUNDING);
  if (leaf === undefined) return [];
  const clear = doorClear({
    leafWidth: leaf,
    leafThickness: LEAF_THICKNESS,
    stop: STOP,
    furniture: 0,
    openAngle: RIGHT_ANGLE,
  });
  if (!clear.ok) return [];
  return [{ kind: 'door leaf', severity: 'warning', rowIndex, measure: 'width', leaf, clear: clear.value }];
}
