import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

// One room at a time: `npm run mutate -- room`. What has been tried and has not changed since is not tried again.
const rooms = JSON.parse(readFileSync(new URL('rooms.json', import.meta.url), 'utf8'));
const room = process.env.MUTATION_ROOM;
const { mutate, tests } = rooms[room];

export default {
  testRunner: 'jest',
  jest: {
    projectType: 'custom',
    config: {
      testEnvironment: 'node',
      testMatch: tests.map((t) => (t.startsWith('!') ? `!**/${t.slice(1)}` : `**/${t}`)),
      transform: { '^.+\\.ts$': '<rootDir>/tests/support/transpile.cjs' },
      modulePathIgnorePatterns: ['<rootDir>/dist/'],
    },
    enableFindRelatedTests: false,
  },
  coverageAnalysis: 'perTest',
  plugins: ['@stryker-mutator/jest-runner'],
  mutate,
  // Words are checked where they matter by the tests of words: a text emptied tells nothing about a figure.
  mutator: { excludedMutations: ['StringLiteral'] },
  ignorePatterns: ['dist', 'coverage', 'manifest.xml', '*.md', 'src/sample/pictures'],
  concurrency: 1,
  timeoutMS: 20000,
  incremental: true,
  incrementalFile: `coverage/mutation/${room}.json`,
  reporters: ['json', 'clear-text', 'progress-append-only'],
  jsonReporter: { fileName: `coverage/mutation/${room}.report.json` },
  clearTextReporter: { logTests: false, allowColor: false, reportTests: false },
  // Not in dist: a build empties it.
  tempDirName: path.join(tmpdir(), `mutation-${process.pid}`),
  disableTypeChecks: '{src,tests}/**/*.ts',
  allowConsoleColors: false,
};
