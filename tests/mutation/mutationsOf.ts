import ts from 'typescript';

/** One small change to a source file. */
export interface Mutation {
  /** Where it begins in the file, from 0. */
  readonly at: number;
  readonly line: number;
  readonly was: string;
  readonly becomes: string;
  readonly text: string;
}

const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '<': ['<=', '>'],
  '<=': ['<', '>'],
  '>': ['>=', '<'],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
};

const CALLS: Readonly<Record<string, string>> = {
  max: 'min',
  min: 'max',
  sin: 'cos',
  cos: 'sin',
};

/**
 * Every simple change to the arithmetic of a file: an operator, a comparison, max for min, sin for cos, a constant,
 * a sign, a condition that always or never holds. What is told in a function's working (calls of `working`, texts) is left alone.
 */
export function mutationsOf(name: string, source: string): Mutation[] {
  const file = ts.createSourceFile(name, source, ts.ScriptTarget.ES2022, true);
  const found: Mutation[] = [];
  const change = (node: ts.Node, becomes: string): void => {
    const from = node.getStart(file);
    const to = node.getEnd();
    found.push({
      at: from,
      line: file.getLineAndCharacterOfPosition(from).line + 1,
      was: source.slice(from, to),
      becomes,
      text: source.slice(0, from) + becomes + source.slice(to),
    });
  };
  const isWorking = (node: ts.Node): boolean =>
    ts.isCallExpression(node) && node.expression.getText(file).startsWith('working');
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || isWorking(node)) return;
    if (ts.isFunctionDeclaration(node) && node.name?.text.startsWith('write')) return;
    if (ts.isBinaryExpression(node)) {
      for (const other of OPERATORS[node.operatorToken.getText(file)] ?? [])
        change(node.operatorToken, other);
    } else if (ts.isNumericLiteral(node)) {
      change(node, node.text === '0' ? '1' : `${Number(node.text) + 1}`);
      if (node.text !== '0') change(node, '0');
    } else if (ts.isIfStatement(node)) {
      for (const always of ['true', 'false']) change(node.expression, always);
    } else if (ts.isConditionalExpression(node)) {
      for (const always of ['true', 'false']) change(node.condition, always);
    } else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken) {
      change(node, node.operand.getText(file));
    } else if (ts.isCallExpression(node)) {
      const called = ts.isPropertyAccessExpression(node.expression) ? node.expression.name : node.expression;
      const other = CALLS[called.getText(file)];
      if (other) change(called, other);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}
