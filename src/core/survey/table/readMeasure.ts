import { readAngle } from '../../measures/readAngle';
import { readLength } from '../../measures/readLength';
import { readMass } from '../../measures/readMass';
import { readQuantity, type Cell, type ReadNumber } from '../../measures/readQuantity';
import { isBlankCell, isErrorCell } from './cells';
import { measureAt, plausibleRange, possibleRange, stageNeeds, type StageName } from '../../stages/kinds';
import { MEASURES, SKY, type MeasureName, type Quantity } from '../../stages/measures';
import type { RefusedMeasure } from './stageRow';
import { refusalWords } from '../words/problemWords';
import { unitsMeant } from '../checks/unitsMeant';

/** A measure as read: a number, nothing because it was not taken, or a refusal. */
export type MeasureRead = number | undefined | RefusedMeasure;

const READ: Readonly<Record<Quantity, (cell: Cell) => ReadNumber>> = {
  length: readLength,
  angle: readAngle,
  mass: readMass,
  count: (cell) => readQuantity(cell, []),
};

/** The sky for a ceiling. */
const OPEN = /^\s*(?:open|sky)\s*$/i;

/**
 * Reads one measure of a row. A number outside the possible range is refused, and the units in which it would be
 * ordinary are named; it is never changed. A bare 0 may be an empty cell and counts as one: not taken, and refused
 * where the stage needs the measure; only where a bare 0 is how none is written is it none.
 * @returns the measure [mm; turn in degrees, rated load in kg], undefined when not taken, or why it is refused
 */
export function readMeasure(stage: StageName | undefined, measure: MeasureName, cell: Cell): MeasureRead {
  const { least, most } = possibleRange(stage, measure);
  const { quantity } = MEASURES[measure];
  if (typeof cell === 'number' && cell !== 0 && cell >= least && cell <= most && quantity !== 'count') {
    return cell;
  }
  if (isBlankCell(cell)) return undefined;
  const refuse = (why: string): RefusedMeasure => ({
    measure,
    got: isErrorCell(cell) ? cell.code : cell,
    why,
  });
  if (isErrorCell(cell)) return refuse(refusalWords({ kind: 'error cell', code: cell.code }));
  if (stage && typeof cell === 'string' && OPEN.test(cell) && measureAt(stage, measure)?.sky) return SKY;
  const number = READ[quantity](cell);
  if (!number.ok) return refuse(refusalWords({ kind: 'unreadable', measure, got: cell, why: number.why }));
  const { value } = number;
  if (value === 0 && number.bare) {
    const none = stage && measureAt(stage, measure)?.none;
    if (none === 'bare 0') return 0;
    const needed = stage !== undefined && stageNeeds(stage).needs.includes(measure);
    return needed ? refuse(refusalWords({ kind: 'zero', canBeNothing: none !== undefined })) : undefined;
  }
  const whole = quantity === 'count';
  if (value < least || value > most || (whole && !Number.isInteger(value))) {
    const usual = stage && plausibleRange(stage, measure);
    const meant = quantity === 'length' ? unitsMeant(cell, usual) : [];
    return refuse(refusalWords({ kind: 'out of range', measure, got: cell, least, most, whole, meant }));
  }
  return value;
}
