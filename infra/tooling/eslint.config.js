// The rules of the house that a machine holds: purity of the libs, the one-way street of imports,
// sizes of files and functions. Each message says what to do instead.
import js from '@eslint/js';
import tseslint from 'typescript-eslint';

const pureGlobals = ['Date', 'fetch', 'setTimeout', 'setInterval', 'process', 'console', 'crypto', 'performance'].map((name) => ({
  name,
  message: `The libs have no clock, no I/O and no chance of their own: take what ${name} would give as an argument.`,
}));

/** Rooms of libs/domain and the rooms each may use beside quantity/ (conventions: fire -> wood, chamber -> fire, cost -> wood food shift). */
const mayUse = {
  quantity: [],
  wood: ['quantity'],
  fire: ['quantity', 'wood'],
  chamber: ['quantity', 'fire'],
  food: ['quantity'],
  shift: ['quantity'],
  reading: ['quantity'],
  alarm: ['quantity'],
  record: [],
  cost: ['quantity', 'wood', 'food', 'shift'],
};
const rooms = [...Object.keys(mayUse), 'contract'];
const roomRule = ([room, allowed]) => ({
  files: [`libs/domain/${room}/**/*.ts`],
  ignores: ['**/*.test.ts'],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        paths: [{ name: 'zod', message: 'zod belongs to libs/domain/contract alone.' }],
        patterns: [
          outside,
          {
            group: rooms.filter((r) => r !== room && !allowed.includes(r)).map((r) => `**/${r}/**`),
            message: `${room}/ may use ${allowed.join(', ') || 'nothing'} only.`,
          },
        ],
      },
    ],
  },
});
const outside = {
  group: ['node:*', '@nestjs/*', 'typeorm', 'react', 'react-*', '**/apps/**', '@stokehold/api', '@stokehold/board'],
  message: 'The libs are pure: no framework, no I/O, nothing from apps/.',
};

export default tseslint.config(
  { ignores: ['**/dist/**', '**/node_modules/**', 'data/**', '**/*.d.ts'] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'No default exports: a thing has one name everywhere.' },
        { selector: 'ExportAllDeclaration', message: 'No export *: an index says what leaves the room.' },
        { selector: 'TSEnumDeclaration', message: 'A union of string literals instead of an enum.' },
      ],
    },
  },
  {
    files: ['infra/**', '**/*.config.{js,ts}', 'tests/**/*.mjs', 'tests/api-database.ts'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly', fetch: 'readonly', setTimeout: 'readonly', clearTimeout: 'readonly' } },
    rules: { 'no-restricted-syntax': 'off' },
  },
  { files: ['apps/api/src/platform/migrations/**', 'apps/board/src/words/**', '**/*.test.ts'], rules: { 'max-lines': 'off' } },
  {
    files: ['libs/**/*.ts'],
    ignores: ['**/*.test.ts', '**/*.test-d.ts'],
    rules: {
      'no-restricted-globals': ['error', ...pureGlobals],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Take a RandomStream as an argument.' }],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ['libs/domain/quantity/instant.ts'], rules: { 'no-restricted-globals': 'off' } },
  ...Object.entries(mayUse).map(roomRule),
  {
    files: ['libs/domain/contract/**/*.ts', 'libs/scheduling/**/*.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [outside] }] },
  },
  {
    files: ['apps/api/src/*/**/*.ts'],
    ignores: ['**/*.test.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        { patterns: [{ regex: '^\\.\\./(?!platform/)[a-z-]+/(?!index\\.js$)', message: "Import another module's index.ts only." }] },
      ],
    },
  },
);
