import { RIGHT_ANGLE } from '../../measures/angle';
import { doorClear } from '../../measures/doorClear';
import { MM_PER_INCH } from '../../measures/readLength';
import { kindOf, type StageName } from '../../stages/kinds';
import type { StageRow } from '../table/stageRow';
import type { LeafClear, RowProblem } from './surveyProblem';

/** Standard door leaves of one family: widths and usual thicknesses [mm]. */
interface Leaves {
  readonly widths: readonly number[];
  readonly thicknesses: readonly number[];
}

const LEAVES: readonly Leaves[] = [
  // Metric leaves with the thicknesses that go with them, 44 for a fire door: 526 to 926 read in lists of door makers, 1026
  // and BS 4787 itself from memory.
  { widths: [526, 626, 726, 826, 926, 1026], thicknesses: [40, 44] },
  // Leaves made to the inch, 2 ft 0 in to 3 ft 0 in, 35 thick (1 3/8 in), 44 (1 3/4 in) at an entrance or against fire:
  // 610, 686, 762, 813 and 838 read in lists of door makers, the others common practice, no source.
  {
    widths: [24, 26, 27, 28, 30, 32, 33, 34, 36].map((inches) => inches * MM_PER_INCH),
    thicknesses: [35, 44],
  },
];

/** How far a stop stands into the opening [mm]: common practice, no source. */
const STOP = 12;

/** The leaves in inches are sold by the whole mm. */
const ROUNDING = 0.5;

const SAYS_CLEAR = /\bclear\b/i;

/** A door's width that is a standard leaf's: the clear opening is narrower by the stop and the open leaf. */
export function doorLeafSlips(
  { measures, rowIndex, note, clear: measuredClear }: StageRow,
  stage: StageName,
): RowProblem[] {
  const { width } = measures;
  if (width === undefined || !kindOf(stage).doorLeaf || measuredClear) return [];
  const made = LEAVES.find(({ widths }) => widths.some((leaf) => Math.abs(width - leaf) <= ROUNDING));
  if (!made) return [];
  const leaf = Math.round(width);
  const leaves = made.thicknesses.flatMap((thickness): LeafClear[] => {
    const clear = doorClear({
      leafWidth: leaf,
      leafThickness: thickness,
      stop: STOP,
      furniture: 0,
      openAngle: RIGHT_ANGLE,
    });
    return clear.ok ? [{ thickness, clear: clear.value }] : [];
  });
  const noteSaysClear = SAYS_CLEAR.test(note);
  return [
    { kind: 'door leaf', severity: 'warning', rowIndex, measure: 'width', leaf, leaves, noteSaysClear },
  ];
}
