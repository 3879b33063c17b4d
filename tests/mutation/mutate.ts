/**
 * How much the tests would notice: one small change at a time is made to the core, in a copy, and the tests that should
 * catch it are run. It changes numbers, which the other tool (`npm run mutate`) does not, and knows the rooms of geometry,
 * where that is too slow, as well as those of rooms.json. What survives is printed: it is either a change without an
 * effect or a test that is missing. Not part of `npm test`: it takes a few seconds a change.
 *
 *   npx tsx tests/mutation/mutate.ts [--every=20] [--offset=0] [part of a file's name ...]
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { mutationsOf } from './mutationsOf';
import rooms from './rooms.json';

const root = resolve(__dirname, '../..');

const CALLED = ['tests/worksheet/clearancePublished.test.ts', 'tests/worksheet/clearanceProperties.test.ts'];
const ROUND = 'tests/core/geometry/rectangleRoundCorner.test.ts';
const ENDS = 'tests/core/stages/flight/flightEnds.test.ts';
const FAMILY = 'tests/core/stages/landing/motionFamilies.test.ts';
const BEST = 'tests/core/stages/landing/motionFamiliesBest.test.ts';
const JOINED = 'tests/core/stages/landing/shortFlightBetweenLandings.test.ts';
const ROUTE = [
  'tests/core/route/judgeRoute.test.ts',
  'tests/core/route/commonPractice.test.ts',
  'tests/core/route/lifted.test.ts',
];
const CUTS = [
  'tests/core/geometry/proofs/landingCuts.test.ts',
  'tests/core/geometry/proofs/centreCut.test.ts',
];

const GEOMETRY: Readonly<Record<string, readonly string[]>> = {
  'src/core/geometry/rectangleThroughOpening.ts': [
    'tests/core/geometry/rectangleThroughOpening.test.ts',
    ...CALLED,
  ],
  'src/core/geometry/rectangleRoundCorner.ts': [ROUND],
  'src/core/stages/opening/opening.ts': ['tests/core/stages/opening/opening.test.ts', ...CALLED],
  'src/core/stages/opening/openingAtMost.ts': ['tests/core/stages/opening/openingAtMost.test.ts'],
  'src/core/stages/corner/corner.ts': [...CALLED, 'tests/core/stages/corner/corner.test.ts'],
  'src/core/stages/corner/cornerLength.ts': [...CALLED, 'tests/core/stages/corner/corner.test.ts'],
  'src/core/stages/upend/upend.ts': ['tests/core/stages/upend/upend.test.ts', ...CALLED],
  'src/core/stages/flight/flight.ts': CALLED,
  'src/core/geometry/bendWithWall.ts': [ENDS],
  'src/core/stages/flight/flightEnds.ts': [JOINED, ENDS],
  'src/core/stages/landing/motionFamilies.ts': [BEST, JOINED, FAMILY],
  'src/core/route/chain.ts': ROUTE,
  'src/core/route/preparedRoute.ts': ROUTE,
  'src/core/geometry/proofs/ladderAtMost.ts': ['tests/core/geometry/proofs/cannotGo.test.ts'],
  'src/core/geometry/proofs/boxInBoxAtMost.ts': ['tests/core/geometry/proofs/cannotGo.test.ts'],
  'src/core/geometry/proofs/yawCutBlocks.ts': ['tests/core/geometry/proofs/cannotGo.test.ts'],
  'src/core/geometry/proofs/centreOnCut.ts': CUTS,
  'src/core/geometry/proofs/centreCutBlocks.ts': CUTS,
  'src/core/geometry/proofs/halfLandingCutBlocks.ts': CUTS,
  'src/core/geometry/proofs/quarterLandingCutBlocks.ts': CUTS,
};

/** The files of a room, and the tests that look at it; patterns of jest, which takes any part of a path. */
function roomTargets(): Record<string, readonly string[]> {
  const targets: Record<string, readonly string[]> = {};
  for (const { mutate, tests } of Object.values(rooms)) {
    const looking = tests.filter((test) => !test.startsWith('!')).map((test) => test.replace(/\*.*$/, ''));
    for (const pattern of mutate) {
      const [folder = ''] = pattern.split('*');
      const files = pattern.includes('*')
        ? readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
            .filter((name) => name.endsWith('.ts') && (pattern.includes('**') || !name.includes('/')))
            .map((name) => join(folder, name))
        : [pattern];
      for (const file of files) targets[file] = looking;
    }
  }
  return targets;
}

/** A change that makes a loop endless is caught, too. */
const LONGEST = 90_000;

const options = process.argv.slice(2);
const numberAfter = (name: string, otherwise: number): number => {
  const given = options.find((o) => o.startsWith(`--${name}=`));
  return given ? Number(given.split('=')[1]) : otherwise;
};
const every = numberAfter('every', 20);
const offset = numberAfter('offset', 0);
const wanted = options.filter((o) => !o.startsWith('--'));

const copy = mkdtempSync(join(tmpdir(), 'mutation-'));
for (const part of ['src', 'tests', 'package.json']) {
  cpSync(join(root, part), join(copy, part), { recursive: true });
}
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

const passes = (tests: readonly string[]): boolean =>
  spawnSync('npx', ['jest', '--bail', '--silent', '-i', ...tests], {
    cwd: copy,
    timeout: LONGEST,
    killSignal: 'SIGKILL',
    stdio: 'ignore',
  }).status === 0;

let tried = 0;
let caught = 0;
try {
  for (const [file, tests] of Object.entries({ ...roomTargets(), ...GEOMETRY })) {
    if (wanted.length > 0 && !wanted.some((w) => file.includes(w))) continue;
    const source = readFileSync(join(root, file), 'utf8');
    if (!passes(tests)) {
      console.log(`${file}: its tests fail without any change`);
      process.exitCode = 1;
      continue;
    }
    const all = mutationsOf(file, source);
    let here = 0;
    let caughtHere = 0;
    for (let i = offset % every; i < all.length; i += every) {
      const { line, was, becomes, text } = all[i]!;
      writeFileSync(join(copy, file), text);
      const survived = passes(tests);
      here += 1;
      if (survived)
        console.log(`survived: ${file}:${line} ${was} -> ${becomes}   ${text.split('\n')[line - 1]!.trim()}`);
      else caughtHere += 1;
    }
    writeFileSync(join(copy, file), source);
    tried += here;
    caught += caughtHere;
    console.log(`${file}: caught ${caughtHere} of ${here} tried (${all.length} possible)`);
  }
  console.log(`caught ${caught} of ${tried}`);
} finally {
  rmSync(copy, { recursive: true, force: true });
}
