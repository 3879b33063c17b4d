import tseslint from 'typescript-eslint';
import plain from './eslint.config.mjs';

// Inner loops over arrays whose length they made themselves: a check at every number would be paid millions of times.
const NUMERIC_KERNELS = [
  'src/core/geometry/{bendWithWall,leastOverAngles,rectangleRoundCorner,turnsRightAngle}.ts',
  'src/core/geometry/planar/{convexShape,decidePassage,edgeFree,freeSlice,grownObstacle}.ts',
  'src/core/geometry/proofs/{boxInBoxAtMost,centreOnCut,yawCutBlocks}.ts',
  'src/core/space/{boxGaps,findMotion,motionByMiddle,raiseOfMotion,spaceChecker,widenedMotion}.ts',
  'src/core/stages/landing/slidRound.ts',
  'src/core/stages/stairTurn/turnGrid.ts',
  'src/core/route/{chain,poseChange}.ts',
];

// The rules that need the types, apart from the others because they read the whole program first: `npm run lint` has
// them, an editor need not.
export default tseslint.config(
  ...plain,
  {
    files: ['src/**/*.ts', 'tests/**/*.ts'],
    extends: [tseslint.configs.recommendedTypeCheckedOnly],
    languageOptions: {
      parserOptions: globalThis.checkedProgram
        ? { programs: [globalThis.checkedProgram] }
        : { project: '../tsconfig.json', tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      // What satisfies an interface of promises has no need to wait for anything itself.
      '@typescript-eslint/require-await': 'off',
      // The host takes errors of its own kind, thrown, and a worker's answer can be any.
      '@typescript-eslint/only-throw-error': [
        'error',
        { allow: [{ from: 'file', name: 'CellError' }], allowThrowingUnknown: true },
      ],
      // The same of a promise that answers with the host's error; the rule knows no exception for a type.
      '@typescript-eslint/prefer-promise-reject-errors': 'off',
    },
  },
  {
    // A type says what is there; where it cannot, `core/lists` names the fault.
    files: ['src/**/*.ts'],
    ignores: NUMERIC_KERNELS,
    rules: { '@typescript-eslint/no-non-null-assertion': 'error' },
  },
  {
    // Tests read foreign files and stand in for foreign objects, whose types nobody gives.
    files: ['tests/**/*.ts'],
    rules: {
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-base-to-string': 'off',
      '@typescript-eslint/unbound-method': 'off',
    },
  },
);
