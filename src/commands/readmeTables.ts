const START = '<!-- functions: written by npm run reference -->';
const END = '<!-- end of functions -->';

/** A README with the tables between its two marks replaced; refused when it has not exactly one pair. */
export function withFunctionTables(readme: string, tables: string): string {
  const from = readme.indexOf(START);
  const to = readme.indexOf(END);
  if (from < 0 || to < from || readme.indexOf(START, from + 1) >= 0) {
    throw new Error('README.md must hold the marks of its function tables once');
  }
  return `${readme.slice(0, from + START.length)}\n\n${tables}\n\n${readme.slice(to)}`;
}
