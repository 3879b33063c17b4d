import { readAngle } from '../../measures/readAngle';
import { readLength } from '../../measures/readLength';
import { readMass } from '../../measures/readMass';
import { readQuantity, type Cell, type ReadNumber } from '../../measures/readQuantity';
import { isBlankCell, isErrorCell } from './cells';
import { plausibleRange } from '../checks/plausibleRange';
import { isPlainZero, possibleRange } from './possibleRange';
import { refusalWords } from '../words/problemWords';
import type { MeasureName, RefusedMeasure, StageName } from './stageMeasures';
import { stageNeeds, usesMeasure } from './stageNeeds';
import { unitsMeant } from '../checks/unitsMeant';

/** A measure as read: a number, nothing because it was not taken, or a refusal. */
export type MeasureRead = number | undefined | RefusedMeasure;

/** Measures of which a bare 0 could be meant: the next turn follows at once, the jamb stands at the closed end. */
const canBeNothing = (stage: StageName | undefined, measure: MeasureName): boolean =>
  (measure === 'run' && stage !== undefined) || (measure === 'depth' && stage === 'side door');

function read(measure: MeasureName, cell: Cell): ReadNumber {
  if (measure === 'turn') return readAngle(cell);
  if (measure === 'ratedLoad') return readMass(cell);
  if (measure === 'risers') return readQuantity(cell, []);
  return readLength(cell);
}

/**
 * Reads one measure of a row. A number outside the possible range is refused, and the units in which it would be
 * ordinary are named; it is never changed. A bare 0 may be an empty cell: it is refused where the stage needs the
 * measure or 0 could be meant, and otherwise counts as not taken.
 * @returns the measure [mm; turn in degrees, rated load in kg], undefined when not taken, or why it is refused
 */
export function readMeasure(stage: StageName | undefined, measure: MeasureName, cell: Cell): MeasureRead {
  const { least, most } = possibleRange(stage, measure);
  if (typeof cell === 'number' && cell !== 0 && cell >= least && cell <= most && measure !== 'risers') {
    return cell;
  }
  if (isBlankCell(cell)) return undefined;
  const refuse = (why: string): RefusedMeasure => ({
    measure,
    got: isErrorCell(cell) ? cell.code : cell,
    why,
  });
  if (isErrorCell(cell)) return refuse(refusalWords({ kind: 'error cell', code: cell.code }));
  const number = read(measure, cell);
  if (!number.ok) return refuse(refusalWords({ kind: 'unreadable', measure, got: cell, why: number.why }));
  const { value } = number;
  if (value === 0 && number.bare) {
    if (stage && isPlainZero(measure)) return usesMeasure(stage, measure) ? 0 : undefined;
    if (canBeNothing(stage, measure)) return refuse(refusalWords({ kind: 'zero', canBeNothing: true }));
    const needed = stage !== undefined && stageNeeds(stage).needs.includes(measure);
    return needed ? refuse(refusalWords({ kind: 'zero', canBeNothing: false })) : undefined;
  }
  const whole = measure === 'risers';
  if (value < least || value > most || (whole && !Number.isInteger(value))) {
    const usual = stage && plausibleRange(stage, measure);
    const isLength = measure !== 'turn' && measure !== 'ratedLoad' && !whole;
    const meant = isLength ? unitsMeant(cell, usual) : [];
    return refuse(refusalWords({ kind: 'out of range', measure, got: cell, least, most, whole, meant }));
  }
  return value;
}
