import tseslint from 'typescript-eslint';

const sizes = {
  'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
  'max-lines': ['error', { max: 200, skipBlankLines: true, skipComments: true }],
  complexity: ['error', 10],
  'max-params': ['error', 4],
};

export default tseslint.config(
  {
    ignores: [
      '**/dist/**',
      '**/.next/**',
      'apps/web/public/**',
      '**/next-env.d.ts',
      'packages/database/src/generated/**',
      'coverage/**',
      'data/**',
      '.cache/**',
      '.npm/**',
    ],
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.recommended],
    rules: {
      ...sizes,
      'no-else-return': 'error',
      'prefer-const': 'error',
      eqeqeq: 'error',
      'no-empty': 'error',
      'no-restricted-syntax': [
        'error',
        {
          selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
          message: 'Randomness is a parameter: pass `random: () => number`.',
        },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
    },
  },
  {
    files: ['packages/**/*.ts', 'apps/api/**/*.ts'],
    ignores: ['**/*.test.ts', '**/*.d.ts'],
    rules: {
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
      '@typescript-eslint/explicit-module-boundary-types': 'error',
    },
  },
  {
    // A component's markup is long by nature; its logic is not.
    files: ['apps/web/**/*.tsx'],
    rules: { 'max-lines-per-function': ['error', { max: 120, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['**/*.test.ts', '**/*.test.tsx', 'tests/**/*.ts'],
    rules: { 'max-lines-per-function': 'off', 'max-lines': 'off' },
  },
);
