import type { ArgumentDescription, FunctionDescription } from './description';
import { cellCost } from './calls/cellCost';
import { QUANTITIES } from './quantities';
import { rangeText } from './allowedText';

/** One function of functions.json, as the host's documents define it. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly options: {
    readonly allowErrorForDataTypeAny: true;
    /** The pane shows the last refusal of the selected cell. */
    readonly requiresAddress: true;
    /** A result that takes long and is no longer wanted is given up. */
    readonly cancelable?: true;
  };
  readonly result: { readonly type: 'any'; readonly dimensionality: 'matrix' };
}

export interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: 'any';
  readonly dimensionality: 'matrix';
  readonly optional?: true;
  readonly repeating?: true;
}

/** The metadata of all functions, from their descriptions alone. */
export function functionsJson(functions: readonly FunctionDescription[]): {
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
} {
  // The documents give this for the whole file; hosts were also seen to read it from a function's options.
  return { allowErrorForDataTypeAny: true, functions: functions.map(metadataOf) };
}

/** The text of functions.json. */
export const functionsJsonText = (functions: readonly FunctionDescription[]): string =>
  `${JSON.stringify(functionsJson(functions), null, 2)}\n`;

function metadataOf(description: FunctionDescription): FunctionMetadata {
  return {
    id: description.id,
    name: description.id,
    description: description.caution ? `${description.summary}. ${description.caution}` : description.summary,
    parameters: description.arguments.map((argument) => ({
      name: argument.name,
      description: parameterText(argument),
      // Any cell and any range, errors too: reading, checking and lifting are ours.
      type: 'any',
      dimensionality: 'matrix',
      ...(argument.optional ? { optional: true as const } : {}),
      ...(argument.repeating ? { repeating: true as const } : {}),
    })),
    options: {
      allowErrorForDataTypeAny: true,
      requiresAddress: true,
      ...(cellCost(description) === Infinity ? { cancelable: true as const } : {}),
    },
    result: { type: 'any', dimensionality: 'matrix' },
  };
}

/** An argument in one line: help, range with unit, default. */
function parameterText(argument: ArgumentDescription): string {
  const range = argument.choices ? argument.choices.join(', ') : rangeText(argument);
  const unit = range || argument.choices ? '' : QUANTITIES[argument.quantity].unit;
  const allowed = range || unit ? `; ${range || unit}` : '';
  return `${argument.help}${allowed}${defaultText(argument)}`;
}

function defaultText({ optional, quantity }: ArgumentDescription): string {
  if (!optional) return '';
  if (optional.default === null) return `; may be left out: ${optional.meaning ?? 'not used'}`;
  const unit = QUANTITIES[quantity].unit;
  const value = `${optional.default}${unit && unit !== '%' ? ` ${unit}` : unit}`;
  return `; ${value} when left out`;
}
