import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

// What a room of the core offers to others says what it means: a doc comment that begins with a sentence.

const CORE = path.resolve(__dirname, '../../src/core');

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const file = path.join(folder, name);
    if (statSync(file).isDirectory()) return sources(file);
    return name.endsWith('.ts') ? [file] : [];
  });
}

interface Exported {
  readonly place: string;
  readonly comment: string;
}

function exportsOf(file: string): Exported[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement): Exported[] => {
    const modifiers = ts.canHaveModifiers(statement) ? ts.getModifiers(statement) : undefined;
    if (!modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
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

const exported = sources(CORE).flatMap(exportsOf);

test('there is much to look at', () => {
  expect(exported.length).toBeGreaterThan(500);
});

test('everything that the core exports says what it is', () => {
  const silent = exported.filter(({ comment }) => !/^\s*\S+\s+\S+/.test(comment));
  expect(silent.map(({ place }) => place)).toEqual([]);
});
