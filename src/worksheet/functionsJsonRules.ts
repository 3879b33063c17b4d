import type { FunctionMetadata } from './functionsJson';

/**
 * What is wrong with function metadata by the host's rules, one line each; none when it is sound.
 * @source Office Add-ins documentation, "Manually create JSON metadata for custom functions": id and name of
 *   letters, digits, points and underscores, starting with a letter, 3 to 128 long, unique; only the last
 *   parameter repeats; an optional parameter is not followed by a required one. A name like a cell address
 *   cannot be called.
 */
export function functionsJsonFaults(functions: readonly FunctionMetadata[]): string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  for (const f of functions) {
    for (const [what, word] of [
      ['id', f.id],
      ['name', f.name],
    ] as const) {
      if (!/^[A-Za-z][A-Za-z0-9._]*$/.test(word))
        faults.push(`${f.id}: ${what} ${word} has a character not allowed`);
      if (word.length < 3 || word.length > 128) faults.push(`${f.id}: ${what} ${word} is not 3 to 128 long`);
      if (isCellAddress(word)) faults.push(`${f.id}: ${what} ${word} is a cell address`);
    }
    // A point inside a name may be saved as an underscore: A.B and A_B would be one.
    const key = f.id.toUpperCase().replace(/\./g, '_');
    if (seen.has(key)) faults.push(`${f.id}: id is there twice`);
    seen.add(key);
    if (f.description.trim() === '') faults.push(`${f.id}: no description`);
    if (f.options.allowErrorForDataTypeAny !== true)
      faults.push(`${f.id}: errors do not reach its parameters`);
    faults.push(...parameterFaults(f));
  }
  return faults;
}

function parameterFaults(f: FunctionMetadata): string[] {
  const faults: string[] = [];
  const names = new Set<string>();
  let optional = false;
  f.parameters.forEach((parameter, i) => {
    const at = `${f.id}.${parameter.name}`;
    if (!/^[A-Za-z][A-Za-z0-9_]*$/.test(parameter.name))
      faults.push(`${at}: name has a character not allowed`);
    if (names.has(parameter.name)) faults.push(`${at}: name is there twice`);
    names.add(parameter.name);
    if (parameter.description.trim() === '') faults.push(`${at}: no description`);
    if (optional && !parameter.optional && !parameter.repeating) {
      faults.push(`${at}: required after an optional one`);
    }
    optional ||= parameter.optional === true;
    if (parameter.repeating && i !== f.parameters.length - 1)
      faults.push(`${at}: repeats but is not the last`);
  });
  return faults;
}

/** XFD1048576 is the last cell of a sheet; R1C1 addresses count too. */
function isCellAddress(word: string): boolean {
  const [, column] = /^([A-Za-z]{1,3})\d{1,7}$/.exec(word) ?? [];
  if (column !== undefined) return column.length < 3 || column.toUpperCase() <= 'XFD';
  return /^[Rr]\d*[Cc]\d*$/.test(word);
}
