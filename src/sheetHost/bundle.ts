import type { AssociatedFunction, CustomFunctionsRuntime } from './customFunctionsRuntime';

export interface BundleParameter {
  readonly name: string;
  readonly type: 'number' | 'string' | 'boolean' | 'any';
  readonly matrix: boolean;
  readonly optional: boolean;
  readonly repeating: boolean;
}

/** One function as its metadata registers it. */
export interface BundleFunction {
  readonly id: string;
  /** As typed in a formula, without the namespace. */
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly BundleParameter[];
  /** Fewest arguments; one left empty between two commas counts. */
  readonly least: number;
  readonly most: number;
  /** Error values in cells reach the function; otherwise they are its result. */
  readonly takesErrors: boolean;
  /** The function is told in which cell it is called. */
  readonly takesAddress: boolean;
  /** The result is a table of cells. */
  readonly matrix: boolean;
  readonly call: AssociatedFunction;
}

export interface Bundle {
  /** By name in capitals. */
  readonly functions: ReadonlyMap<string, BundleFunction>;
  readonly runtime: CustomFunctionsRuntime;
  /** What kept a function from being registered, one sentence each. */
  readonly faults: readonly string[];
  /** Whether what a function returned only stands for its answer, for which it is to be called again. */
  readonly isProvisional?: (result: unknown) => boolean;
}

/** The most arguments that any function of the host takes. */
const MOST_ARGUMENTS = 255;

type Json = Readonly<Record<string, unknown>>;

/**
 * Registers a bundle through its functions.json: a function is there only when its metadata are complete and
 * something is associated with its id ("Manually create JSON metadata for custom functions").
 * @param metadata the content of functions.json
 * @param runtime what the script was run with
 */
export function registerBundle(metadata: unknown, runtime: CustomFunctionsRuntime): Bundle {
  const functions = new Map<string, BundleFunction>();
  const faults: string[] = [];
  const top = isObject(metadata) ? metadata : {};
  if (!Array.isArray(top['functions'])) faults.push('functions.json has no list "functions"');
  const ids = new Set<string>();
  for (const entry of Array.isArray(top['functions']) ? (top['functions'] as unknown[]) : []) {
    if (!isObject(entry) || typeof entry['id'] !== 'string' || typeof entry['name'] !== 'string') {
      faults.push('a function of functions.json has no id or no name');
      continue;
    }
    const id = entry['id'];
    const call = runtime.associated.get(id);
    const parameters = readParameters(entry['parameters']);
    if (ids.has(id)) faults.push(`${id} is described twice`);
    else if (!call) faults.push(`nothing is associated with ${id}`);
    else if (!parameters) faults.push(`the parameters of ${id} are not a list of named parameters`);
    else functions.set(entry['name'].toUpperCase(), describe(id, entry, parameters, call, top));
    ids.add(id);
  }
  for (const id of runtime.associated.keys()) {
    if (!ids.has(id)) faults.push(`${id} is associated but not described in functions.json`);
  }
  return { functions, runtime, faults };
}

function describe(
  id: string,
  entry: Json,
  parameters: readonly BundleParameter[],
  call: AssociatedFunction,
  top: Json,
): BundleFunction {
  const options = isObject(entry['options']) ? entry['options'] : {};
  const result = isObject(entry['result']) ? entry['result'] : {};
  const repeats = parameters.some((p) => p.repeating);
  return {
    id,
    name: String(entry['name']).toUpperCase(),
    description: typeof entry['description'] === 'string' ? entry['description'] : '',
    parameters,
    least: parameters.filter((p) => !p.optional && !p.repeating).length,
    most: repeats ? MOST_ARGUMENTS : parameters.length,
    // The document puts it at the top of the file; tools also write it among the options of a function.
    takesErrors: top['allowErrorForDataTypeAny'] === true || options['allowErrorForDataTypeAny'] === true,
    takesAddress: options['requiresAddress'] === true,
    matrix: result['dimensionality'] === 'matrix',
    call,
  };
}

function readParameters(value: unknown): BundleParameter[] | undefined {
  if (!Array.isArray(value)) return undefined;
  const parameters: BundleParameter[] = [];
  for (const entry of value as unknown[]) {
    if (!isObject(entry) || typeof entry['name'] !== 'string') return undefined;
    const type = entry['type'] ?? 'any';
    if (type !== 'number' && type !== 'string' && type !== 'boolean' && type !== 'any') return undefined;
    parameters.push({
      name: entry['name'],
      type,
      matrix: entry['dimensionality'] === 'matrix',
      optional: entry['optional'] === true,
      repeating: entry['repeating'] === true,
    });
  }
  return parameters;
}

const isObject = (value: unknown): value is Json => typeof value === 'object' && value !== null;
