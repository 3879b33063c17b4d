import type { ArgumentDescription } from './description';
import { QUANTITIES } from './quantities';

/** What an argument allows, in words: range, unit and the forms a cell may take. */
export function allowedText(argument: ArgumentDescription): string {
  if (argument.choices) return listInSight(argument.choices);
  const range = rangeText(argument);
  const forms = QUANTITIES[argument.quantity].forms;
  return range ? `${range} (${forms})` : forms;
}

/** Characters of a list of words in a message, which has to be short to be shown whole. */
const LONGEST_LIST = 120;

/** As many words of a list as a message has room for, and how many more there are. */
function listInSight(words: readonly string[]): string {
  const all = words.join(', ');
  if (all.length <= LONGEST_LIST) return all;
  let shown = words.length;
  while (shown > 1 && words.slice(0, shown).join(', ').length > LONGEST_LIST) shown--;
  return `${words.slice(0, shown).join(', ')} and ${words.length - shown} more, listed in the help`;
}

/** The range alone, with its unit: `100 to 20000 mm`. */
export function rangeText(argument: ArgumentDescription): string {
  const unit = QUANTITIES[argument.quantity].unit;
  const low = argument.above !== undefined ? `more than ${argument.above}` : argument.least;
  const high = argument.below !== undefined ? `less than ${argument.below}` : argument.most;
  const whole = argument.whole ? 'whole numbers, ' : '';
  const tail = unit ? ` ${unit}` : '';
  if (low === undefined && high === undefined) return argument.whole ? 'whole numbers' : '';
  if (high === undefined) {
    return `${whole}${argument.above !== undefined ? low : `${low} or more`}${tail}`;
  }
  if (low === undefined) return `${whole}${argument.below !== undefined ? high : `at most ${high}`}${tail}`;
  const join = argument.above !== undefined || argument.below !== undefined ? ' and ' : ' to ';
  const upper = argument.below === undefined && join === ' and ' ? `at most ${high}` : high;
  const lower = argument.above === undefined && join === ' and ' ? `at least ${low}` : low;
  return `${whole}${lower}${join}${upper}${tail}`;
}
