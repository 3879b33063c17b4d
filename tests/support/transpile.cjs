// Types are checked by `tsc --noEmit`; here the types are only taken off, which starts many times faster.
const ts = require('typescript');

module.exports = {
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
      code: outputText.replace(
        /\/\/# sourceMappingURL=.*$/m,
        `//# sourceMappingURL=data:application/json;base64,${Buffer.from(JSON.stringify(map)).toString('base64')}`,
      ),
    };
  },
};
