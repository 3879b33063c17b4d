import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { sourcesIn } from '../support/filesIn';

// What a room of the core offers to others says what it means: a doc comment that begins with a sentence.

const CORE = path.resolve(__dirname, '../../src/core');

interface Exported {
  readonly place: string;
  readonly comment: string;
}

const isExported = (statement: ts.Statement): boolean =>
  ts.canHaveModifiers(statement) &&
  ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;

function exportsOf(file: string): Exported[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement): Exported[] => {
    if (!isExported(statement)) return [];
    const name = ts.isVariableStatement(statement)
      ? statement.declarationList.declarations
          .map((declaration) => declaration.name.getText(source))
          .join(', ')
      : ((statement as ts.DeclarationStatement).name?.getText(source) ?? '');
    const comment = ts
      .getJSDocCommentsAndTags(statement)
      .map((doc) => ts.getTextOfJSDocComment(doc.comment) ?? '')
      .join(' ');
    return [{ place: `${path.relative(CORE, file)}: ${name}`, comment }];
  });
}

const exported = sourcesIn(CORE).flatMap(exportsOf);

test('there is much to look at', () => {
  expect(exported.length).toBeGreaterThan(500);
});

test('everything that the core exports says what it is', () => {
  const silent = exported.filter(({ comment }) => !/^\s*\S+\s+\S+/.test(comment));
  expect(silent.map(({ place }) => place)).toEqual([]);
});

/** What is measured, by the names that the core has for it; counts, places in lists and pure numbers are not among them. */
const MEASURED =
  /^(?:rise|going|width\w*|height|headroom|length|breadth|thickness|depth\w*|allowance|raise|tape|ceiling|clearance|mass|load|pitch|tilt|turn|distance|line|moment|stress|minutes|speed|padding|\w+(?:Width|Height|Depth|Ceiling|Space|Angle|Mass|Load))$/;

const isNumber = (type: ts.TypeNode | undefined, source: ts.SourceFile): boolean =>
  type !== undefined && /^number(?: \| undefined)?$/.test(type.getText(source));

interface Measured {
  readonly place: string;
  readonly unit: boolean;
}

/** Numbers that are members of an exported interface, or parameters with a tag of their own, with whether a unit stands there. */
function measuredIn(file: string): Measured[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const words = (node: ts.Node): string =>
    ts
      .getJSDocCommentsAndTags(node)
      .map((doc) => doc.getText(source))
      .join(' ');
  const at = path.relative(CORE, file);
  return source.statements.filter(isExported).flatMap((statement): Measured[] => {
    if (ts.isInterfaceDeclaration(statement)) {
      const all = words(statement);
      return statement.members.flatMap((member): Measured[] => {
        if (!ts.isPropertySignature(member) || !isNumber(member.type, source)) return [];
        const name = member.name.getText(source);
        if (!MEASURED.test(name)) return [];
        return [{ place: `${at}: ${statement.name.text}.${name}`, unit: /\[/.test(words(member) + all) }];
      });
    }
    if (!ts.isFunctionDeclaration(statement)) return [];
    return statement.parameters.flatMap((parameter): Measured[] => {
      const name = parameter.name.getText(source);
      if (!isNumber(parameter.type, source) || !MEASURED.test(name)) return [];
      const told = ts.getJSDocParameterTags(parameter);
      const unit = told.some((tag) => tag.getText(source).includes('['));
      return [
        { place: `${at}: ${statement.name?.text}(${name})`, unit: unit || /\[/.test(words(statement)) },
      ];
    });
  });
}

test('what is measured has its unit beside it: on the member, or once for all on what it belongs to', () => {
  const measured = sourcesIn(CORE).flatMap(measuredIn);
  expect(measured.length).toBeGreaterThan(250);
  expect(measured.filter(({ unit }) => !unit).map(({ place }) => place)).toEqual([]);
});

interface Answering {
  readonly place: string;
  /** The whole doc comment. */
  readonly words: string;
  /** What it answers, as its type is written; undefined where that is left to be inferred. */
  readonly answer: string | undefined;
  readonly parameters: readonly ts.ParameterDeclaration[];
  readonly source: ts.SourceFile;
}

/** Functions that a file exports, however they are written. */
function functionsOf(file: string): Answering[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements.filter(isExported).flatMap((statement): Answering[] => {
    const made = ts.isFunctionDeclaration(statement)
      ? [{ name: statement.name, signature: statement as ts.SignatureDeclaration }]
      : ts.isVariableStatement(statement)
        ? statement.declarationList.declarations.flatMap(({ name, initializer }) =>
            initializer && ts.isArrowFunction(initializer) ? [{ name, signature: initializer }] : [],
          )
        : [];
    return made.map(({ name, signature }) => ({
      place: `${path.relative(CORE, file)}: ${name?.getText(source) ?? ''}`,
      words: ts
        .getJSDocCommentsAndTags(statement)
        .map((doc) => doc.getText(source))
        .join(' '),
      answer: signature.type?.getText(source).replace(/\s+/g, ' '),
      parameters: [...signature.parameters],
      source,
    }));
  });
}

const functions = sourcesIn(CORE).flatMap(functionsOf);
const placesOf = (wrong: readonly Answering[]): string[] => wrong.map(({ place }) => place);

test('what answers yes or no says to which question, or what yes is', () => {
  const asked = functions.filter(({ answer }) => /^boolean\b|\bis \w+$/.test(answer ?? ''));
  expect(asked.length).toBeGreaterThan(40);
  expect(placesOf(asked.filter(({ words }) => !/whether|@returns|\btrue\b/i.test(words)))).toEqual([]);
});

test('what may answer nothing says when', () => {
  const open = functions.filter(({ answer }) => /\| (?:undefined|null)$/.test(answer ?? ''));
  expect(open.length).toBeGreaterThan(60);
  const silent = open.filter(({ words }) => !/undefined|\bnull\b|\bnone\b|nothing|@returns/i.test(words));
  expect(placesOf(silent)).toEqual([]);
});

test('what answers a number says its unit, or that it counts, compares or names a row', () => {
  const counted = functions.filter(({ answer }) => /^number(?: \| undefined)?$/.test(answer ?? ''));
  expect(counted.length).toBeGreaterThan(60);
  const silent = counted.filter(
    ({ words }) => !/\[|\b1 (?:=|the same)|\bshare\b|\bin mm\b|\bnumber of\b/i.test(words),
  );
  expect(placesOf(silent)).toEqual([]);
});

test('where a derivation is our own, the tag for sources says so', () => {
  const apart = functions.filter(({ words }) => /derivation/.test(words.replace(/@source[^@]*/g, '')));
  expect(placesOf(apart)).toEqual([]);
});

test('no function that is exported takes a bare yes or no', () => {
  const all = sourcesIn(path.resolve(CORE, '..')).flatMap(functionsOf);
  expect(all.length).toBeGreaterThan(functions.length);
  const trapped = all.filter(({ parameters, source }) =>
    parameters.some(({ type }) => type?.getText(source) === 'boolean'),
  );
  expect(placesOf(trapped)).toEqual([]);
});

test('each argument has a line of its own', () => {
  expect(placesOf(functions.filter(({ words }) => /@param[^\n]*@param/.test(words)))).toEqual([]);
});

test('each number that is named at the top of a file has words of its own', () => {
  const numbers = sourcesIn(CORE).flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
    return source.statements.flatMap((statement) => {
      if (!ts.isVariableStatement(statement)) return [];
      const [declared] = statement.declarationList.declarations;
      const value = declared?.initializer;
      if (!value || !ts.isNumericLiteral(ts.isPrefixUnaryExpression(value) ? value.operand : value))
        return [];
      const before = ts.getLeadingCommentRanges(source.text, statement.getFullStart()) ?? [];
      return [
        { place: `${path.relative(CORE, file)}: ${declared.name.getText(source)}`, told: before.length > 0 },
      ];
    });
  });
  expect(numbers.length).toBeGreaterThan(150);
  expect(numbers.filter(({ told }) => !told).map(({ place }) => place)).toEqual([]);
});
