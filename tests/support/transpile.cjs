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

module.exports = {
  getCacheKey: (source, fileName) =>
    createHash('sha1').update(self).update(ts.version).update(fileName).update(source).digest('hex'),
  process(source, fileName) {
    const { outputText, sourceMapText } = ts.transpileModule(source, {
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
