import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['node_modules/', 'dist/', 'coverage/', '.cache/'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      'no-empty': ['error', { allowEmptyCatch: false }],
      'no-console': 'error',
      eqeqeq: 'error',
      'prefer-const': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': 'error',
    },
  },
  // Printing is the work of the command line, the start-up scripts, the benches and the makers.
  {
    files: ['server/cli.ts', 'server/cli/**', 'server/main.ts', 'server/*.mjs', 'tests/bench/**', 'fixtures/make/**'],
    rules: { 'no-console': 'off' },
  },
);
