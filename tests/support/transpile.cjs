// Types are checked by `tsc --noEmit`; here the types are only taken off, which starts many times faster.
const { createHash } = require('node:crypto');
const { readFileSync } = require('node:fs');
const ts = require('typescript');

// A test file runs in a context of its own, where each look at a global leaves the compiled code: many times as slow
// as a look at a constant of the module.
const GLOBALS = ['Array', 'Infinity', 'Map', 'Math', 'NaN', 'Number', 'Object', 'Set'];

/** Takes the globals that a file uses into constants of the module, on its first line, so that no line moves. */
function withOwnGlobals(code) {
  const used = GLOBALS.filter((name) => new RegExp(`(?<![.\\w$])${name}(?![\\w$:])`).test(code));
  return used.length === 0
    ? code
    : code.replace(/^"use strict";/, `$& const { ${used.join(', ')} } = globalThis;`);
}

const self = readFileSync(__filename);

/** With IDLE=1 every `expect` of a test tells that it was come to; everyTestAsserts.ts says which were not. */
function telling(source, fileName) {
  const file = ts.createSourceFile(fileName, source, ts.ScriptTarget.ES2022, true);
  const calls = [];
  const visit = (node) => {
    if (ts.isCallExpression(node) && node.expression.getText(file) === 'expect')
      calls.push(node.getStart(file));
    ts.forEachChild(node, visit);
  };
  visit(file);
  const lineOf = (at) => file.getLineAndCharacterOfPosition(at).line + 1;
  let text = source;
  for (const at of [...calls].sort((a, b) => b - a))
    text = `${text.slice(0, at)}(globalThis.comeTo(${lineOf(at)}), expect)${text.slice(at + 'expect'.length)}`;
  return `globalThis.expectsAt = ${JSON.stringify(calls.map(lineOf))};${text}`;
}

module.exports = {
  getCacheKey: (source, fileName) =>
    createHash('sha1')
      .update(self)
      .update(ts.version)
      .update(process.env.IDLE ?? '')
      .update(fileName)
      .update(source)
      .digest('hex'),
  process(source, fileName) {
    const told = process.env.IDLE && fileName.endsWith('.test.ts') ? telling(source, fileName) : source;
    const { outputText, sourceMapText } = ts.transpileModule(told, {
      fileName,
      compilerOptions: {
        module: ts.ModuleKind.CommonJS,
        target: ts.ScriptTarget.ES2022,
        esModuleInterop: true,
        sourceMap: true,
      },
    });
    const map = JSON.parse(sourceMapText);
    map.sources = [fileName];
    return {
      code: withOwnGlobals(outputText).replace(
        /\/\/# sourceMappingURL=.*$/m,
        `//# sourceMappingURL=data:application/json;base64,${Buffer.from(JSON.stringify(map)).toString('base64')}`,
      ),
    };
  },
};
