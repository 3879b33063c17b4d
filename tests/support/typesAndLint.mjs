// Types and lint in one process: the rules that need types ask the checker that has just worked them all out, where
// two processes would each work them out anew.
import { createRequire } from 'node:module';
import path from 'node:path';
import { ESLint } from 'eslint';

const ts = createRequire(import.meta.url)('typescript');
const root = path.resolve(import.meta.dirname, '../..');
const told = {
  getCanonicalFileName: (name) => name,
  getCurrentDirectory: () => root,
  getNewLine: () => '\n',
};

const config = ts.getParsedCommandLineOfConfigFile(
  path.join(root, 'tsconfig.json'),
  {},
  {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: (fault) => {
      throw new Error(ts.formatDiagnostic(fault, told));
    },
  },
);
const program = ts.createProgram(config.fileNames, config.options);
const faults = [...config.errors, ...ts.getPreEmitDiagnostics(program)];
process.stdout.write(ts.formatDiagnostics(faults, told));

// .config/eslint.typed.config.mjs takes it from here.
globalThis.checkedProgram = program;
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: path.join(root, '.config/eslint.typed.config.mjs'),
});
const linted = await eslint.lintFiles('.');
const words = await (await eslint.loadFormatter('stylish')).format(linted);
if (words !== '') console.log(words);

const isWrong = faults.length > 0 || linted.some(({ errorCount }) => errorCount > 0);
process.exitCode = isWrong ? 1 : 0;
