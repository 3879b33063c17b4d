const { statSync } = require('node:fs');

// What takes longest begins first, so that no core waits for it at the end. A fresh copy knows no times of an earlier
// run, and the size of a file tells nothing of the work in it.
const LONGEST = [
  'sheetHost/page',
  'taskpane/pane',
  'sample/sampleWorkbook',
  'attacks/hunt',
  'golden/golden',
  'core/geometry/proofs/passageCuts',
  'drawing/monthDrawn',
  'attacks/big',
  'core/route/oneMotion',
  'core/route/openRoutes',
  'taskpane/paneAndHost',
  'worksheet/reply',
  'core/route/remeasure',
  'core/stages/lowPart',
  'attacks/damaged',
];

const rank = ({ path }) => {
  const at = LONGEST.findIndex((name) => path.replaceAll('\\', '/').endsWith(`/tests/${name}.test.ts`));
  return at < 0 ? LONGEST.length : at;
};

/** In which order jest takes the test files. */
module.exports = class LongestFirst {
  sort(tests) {
    const known = tests.map((test) => ({ test, rank: rank(test), size: statSync(test.path).size }));
    return known.sort((a, b) => a.rank - b.rank || b.size - a.size).map(({ test }) => test);
  }

  allFailedTests(tests) {
    return tests;
  }

  cacheResults() {}
};
