import { readFileSync } from 'node:fs';
import path from 'node:path';
import vm from 'node:vm';
import ts from 'typescript';
import { sourcesIn } from '../support/filesIn';

/*
 * What a doc comment gives as an example is run: `@example footLoad({ mass: 400, feet: 4 }) // 1.961 kN`, one a tag, on as
 * many lines as it takes. It may call what any room exports, its own file first. Of an outcome the value counts. A number
 * is meant to the places in which it is written, and may be followed by its unit or a remark; anything else is written as
 * a literal and is equal.
 */

const SOURCE = path.resolve(__dirname, '../../src');

/** Pages and commands, which do something when they are loaded. */
const NOT_LOADED = /^(?:commands|taskpane|sheetHost\/page)\//;

interface Example {
  readonly place: string;
  readonly file: string;
  readonly text: string;
}

const files = sourcesIn(SOURCE).filter((file) => !NOT_LOADED.test(path.relative(SOURCE, file)));
/** In which files a name is exported. */
const homes = new Map<string, string[]>();
const examples: Example[] = [];

for (const file of files) {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const seen = new Set<ts.Node>();
  const look = (node: ts.Node): void => {
    for (const tag of ts.getJSDocTags(node)) {
      if (tag.tagName.text !== 'example' || seen.has(tag)) continue;
      seen.add(tag);
      const text = tag
        .getText(source)
        .replace(/^@example/, '')
        .replace(/\n\s*\*\/?/g, '\n')
        .trim();
      examples.push({ place: path.relative(SOURCE, file), file, text });
    }
    ts.forEachChild(node, look);
  };
  look(source);
  for (const statement of source.statements) {
    const modifiers = ts.canHaveModifiers(statement) ? ts.getModifiers(statement) : undefined;
    if (!modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) continue;
    const names = ts.isVariableStatement(statement)
      ? statement.declarationList.declarations.map(({ name }) => name.getText(source))
      : [(statement as ts.DeclarationStatement).name?.getText(source) ?? ''];
    if (ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) continue;
    for (const name of names) homes.set(name, [...(homes.get(name) ?? []), file]);
  }
}

type Loaded = Readonly<Record<string, unknown>>;
const load = (file: string): Loaded => jest.requireActual<Loaded>(file);

/** Runs an expression with what `file` exports, and then all others, at hand. */
function run(expression: string, file: string): unknown {
  const own = load(file);
  const scope = new Proxy(
    {},
    {
      has: (_, name) => typeof name === 'string' && (name in own || homes.has(name)),
      get: (_, name) => {
        if (typeof name !== 'string') return undefined;
        return name in own ? own[name] : load(homes.get(name)?.[0] ?? '')[name];
      },
    },
  );
  const compiled = vm.compileFunction(`with (scope) { return (${expression}\n); }`, ['scope']) as (
    scope: object,
  ) => unknown;
  return compiled(scope);
}

/** What an outcome found; a refusal stays what it is. */
function valueOf(result: unknown): unknown {
  const outcome = result as { readonly ok?: unknown; readonly value?: unknown } | null;
  return typeof result === 'object' && outcome?.ok === true && !('bare' in outcome) ? outcome.value : result;
}

const NUMBER = /^-?\d+(?:\.(\d+))?(?=$|[ ,:;=])/;

const CALLS = /^([\s\S]*?)\s*\/\/\s*([\s\S]*)$/;

test('there are examples to run, and most rooms have some', () => {
  expect(examples.length).toBeGreaterThan(80);
});

test.each(examples.map(({ place, file, text }) => [place, text, file] as const))(
  '%s: %s',
  (_, text, file) => {
    const [, expression, expected] = CALLS.exec(text) ?? [];
    if (expression === undefined || expected === undefined) throw new Error(`no "// result" after ${text}`);
    const result = valueOf(run(expression, file));
    const number = NUMBER.exec(expected);
    if (number && typeof result === 'number') {
      const half = 0.5 * 10 ** -(number[1]?.length ?? 0);
      expect(Math.abs(result - Number(number[0]))).toBeLessThanOrEqual(half * (1 + 1e-9));
    } else {
      // Made here, so that it is of the same realm as what it is held against.
      const literal = vm.runInThisContext(`(${expected}\n)`) as unknown;
      expect(JSON.parse(JSON.stringify(result))).toEqual(JSON.parse(JSON.stringify(literal)));
    }
  },
);
