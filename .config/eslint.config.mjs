import tseslint from 'typescript-eslint';
import prettier from 'eslint-config-prettier';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'coverage/'] },
  ...tseslint.configs.recommended,
  prettier,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-console': 'off',
      'prefer-const': 'error',
    },
  },
  {
    // Read by tools that load CommonJS.
    files: ['webpack.config.js', '**/*.cjs'],
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
  {
    // Between 0 and 1 nearly all of fast-check's doubles are as good as 0: tests/support/evenly.ts spreads them.
    files: ['tests/**/*.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'fc', property: 'double', message: 'Use evenly().' },
        { object: 'fc', property: 'float', message: 'Use evenly().' },
      ],
    },
  },
  {
    // The core is pure: nothing of the host, the page, the clock, chance or files.
    files: ['src/core/**/*.ts'],
    rules: {
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        'window',
        'document',
        'Office',
        'Excel',
        'CustomFunctions',
        'process',
        'performance',
        'setTimeout',
        'Date',
        'fetch',
        'localStorage',
      ],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }],
    },
  },
);
