import { kindOf, plausibleRange, type StageName } from '../../stages/kinds';
import { within } from '../../stages/measures';
import type { StageRow } from '../table/stageRow';
import type { RowProblem } from './surveyProblem';

/**
 * Width and height exchanged: the height is lower than any such way is, and each of the two would be ordinary as
 * the other. A wide opening of ordinary height is not taken for one.
 */
export function widthHeightExchanged({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { width, height } = measures;
  const widths = plausibleRange(stage, 'width');
  const heights = plausibleRange(stage, 'height');
  if (width === undefined || height === undefined || !widths || !heights || kindOf(stage).role === 'room')
    return [];
  if (height >= heights.least || !within(height, widths) || !within(width, heights)) return [];
  return [{ kind: 'width and height exchanged', severity: 'warning', rowIndex, width, height }];
}
