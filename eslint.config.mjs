import { createTypeScriptImportResolver } from 'eslint-import-resolver-typescript';
import importX from 'eslint-plugin-import-x';
import tseslint from 'typescript-eslint';

// ---- Who may import whom: domain <- wire <- solve, server, offline <- components <- app ----

const never = (target, from, message) => ({ target, from, message });

const houseZones = [
  never(
    './lib/domain',
    [
      './lib/wire',
      './lib/solve',
      './lib/server',
      './lib/offline',
      './lib/cli',
      './components',
      './app',
      './prisma',
    ],
    'The rulebook knows nothing above itself: move the rule down into lib/domain, or pass the value in as a fact.',
  ),
  never(
    './lib/wire',
    ['./lib/solve', './lib/server', './lib/offline', './lib/cli', './components', './app', './prisma'],
    'wire is shapes shared by both sides: take types from lib/domain and leave the work to the caller.',
  ),
  never(
    './lib/solve',
    ['./lib/server', './lib/offline', './lib/cli', './components', './app', './prisma'],
    'A solver gets its problem as data: let the server load it and pass it in.',
  ),
  never(
    './lib/server',
    ['./lib/offline', './lib/cli', './components', './app'],
    'The server does not know its callers: pass the value as an argument, or move what is shared to lib/wire.',
  ),
  never(
    './lib/offline',
    ['./lib/solve', './lib/server', './lib/cli', './components', './app', './prisma'],
    'This runs in the browser: talk to the server through its API with the shapes of lib/wire.',
  ),
  never(
    './lib/cli',
    ['./lib/offline', './components', './app', './prisma'],
    'The command line uses lib/domain, lib/wire, lib/solve and lib/server, as the app does.',
  ),
  never(
    './components',
    ['./lib/server', './lib/solve', './lib/cli', './app', './prisma'],
    'Components get data and actions as props: let the page fetch and pass them down.',
  ),
  {
    target: './components/ui',
    from: './components',
    except: ['./ui'],
    message: 'ui/ knows no shop words: move the piece that needs them out of ui/.',
  },
  never('./components/ui', './lib', 'ui/ knows no shop words: pass plain text and numbers as props.'),
  never('./app', ['./prisma', './lib/cli'], 'Routes hold no data access: add a query to lib/server/queries.'),
  never(
    ['./lib', './components', './app'],
    ['./seed', './tests'],
    'Nothing depends on the seed or the tests: move what is shared into lib.',
  ),
];

// ---- Inside the rulebook: base <- plan <- torque <- car <- shop <- the files at its top ----

const layers = ['base', 'plan', 'torque', 'car', 'shop'];

const layerZones = layers.map((layer, index) => ({
  target: `./lib/domain/${layer}`,
  from: './lib/domain',
  except: layers.slice(0, index + 1).map((lower) => `./${lower}`),
  message: `${layer}/ imports only ${layers.slice(0, index + 1).join(', ')}: move what you need down into one of them, or take it as an argument.`,
}));

// ---- What the rulebook may not touch ----

const upTwo = {
  regex: String.raw`^\.\./\.\.(/|$)`,
  message: 'Write @/… from the root of the project instead.',
};

const forbiddenGlobals = Object.entries({
  'Pass what was read in as a fact; lib/server or lib/cli does the reading.': [
    'fetch',
    'XMLHttpRequest',
    'WebSocket',
    'indexedDB',
    'localStorage',
    'sessionStorage',
  ],
  'The rulebook runs in browsers too: pass the setting in as an argument.': [
    'process',
    'Buffer',
    'require',
    'module',
    '__dirname',
    '__filename',
    'global',
    'globalThis',
    'window',
    'self',
    'document',
    'navigator',
    'location',
  ],
  'Return a refusal, a finding or a value and let the caller print it.': ['console', 'alert'],
  'Ids and random values arrive in the command; hashes are made outside.': ['crypto'],
  'Take the time from the command: it carries `at`.': ['performance'],
  'Nothing waits in the rulebook: compute the due time and let the caller wake up for it.': [
    'setTimeout',
    'setInterval',
    'setImmediate',
    'queueMicrotask',
    'requestAnimationFrame',
    'Promise',
  ],
}).flatMap(([message, names]) => names.map((name) => ({ name, message })));

const clock = 'Take the time from the command: it carries `at`.';
const waiting = 'decide and evolve are plain functions: load first, then call them with the facts.';
const forbiddenSyntax = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: clock },
  { selector: 'CallExpression[callee.name="Date"]', message: clock },
  { selector: 'MemberExpression[object.name="Date"][property.name="now"]', message: clock },
  { selector: 'MemberExpression[object.name="Temporal"][property.name="Now"]', message: clock },
  {
    selector: 'MemberExpression[object.name="Math"][property.name="random"]',
    message: 'Take ids and random values from the command; a generator gets its seed as an argument.',
  },
  { selector: ':function[async=true]', message: waiting },
  { selector: 'AwaitExpression, ForOfStatement[await=true]', message: waiting },
  { selector: 'ImportExpression', message: 'Import at the top of the file.' },
];

const forbiddenImports = [
  upTwo,
  {
    regex: '^node:',
    message: 'The rulebook does no I/O: read in lib/server or lib/cli and pass the value in.',
  },
  {
    // Anything that is neither a file beside this one nor a file of this project.
    regex: String.raw`^(?!\.|@/|node:)`,
    message:
      'The rulebook uses no package (React, Next, Prisma, zod, yaml, Node): parse in lib/wire, write it here, or pass it in.',
  },
];

// ---- Everywhere ----

/** What is alike would pass for it: a plain error for one that somebody waits for. */
const ownKind = {
  selector:
    'ClassDeclaration:matches([superClass=null], [superClass.name="Error"]):not(:has(:matches(PropertyDefinition, MethodDefinition):matches([accessibility=/private|protected/], [key.type="PrivateIdentifier"], [key.name="name"])))',
  message:
    'Give the class something private, or an error its name: types take it for any other of that shape.',
};

export default tseslint.config(
  { ignores: ['.data/', '.next/', 'coverage/', 'prisma/generated/', 'next-env.d.ts'] },
  {
    files: ['**/*.ts', '**/*.tsx'],
    // What needs types is looked at by tests/checks/oxlint.json, in a fifth of the time.
    extends: [tseslint.configs.strict],
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/ban-ts-comment': [
        'error',
        { 'ts-ignore': true, 'ts-nocheck': true, 'ts-expect-error': 'allow-with-description' },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['**/*.ts', '**/*.tsx', '**/*.mjs'],
    plugins: { 'import-x': importX },
    settings: {
      // Without the resolver no zone is found behind @/. Circles are knip's to find, in a twentieth of the time.
      ...importX.flatConfigs.typescript.settings,
      'import-x/resolver-next': [createTypeScriptImportResolver()],
    },
    rules: {
      eqeqeq: 'error',
      'import-x/no-restricted-paths': [
        'error',
        { basePath: import.meta.dirname, zones: [...houseZones, ...layerZones] },
      ],
      'no-restricted-imports': ['error', { patterns: [upTwo] }],
      'no-restricted-syntax': ['error', ownKind],
    },
  },
  {
    files: ['lib/**'],
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'import-x/no-default-export': 'error',
    },
  },
  {
    files: ['components/**', 'app/**'],
    rules: {
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'no-restricted-syntax': [
        'error',
        ownKind,
        {
          selector: 'JSXAttribute[name.name="style"]',
          message:
            'The content security policy refuses style attributes: use a class, an SVG attribute or a data attribute.',
        },
      ],
    },
  },
  { files: ['components/**'], rules: { 'import-x/no-default-export': 'error' } },
  {
    files: ['tests/e2e/**', 'tests/support/**'],
    rules: {
      'no-restricted-syntax': [
        'error',
        ownKind,
        {
          selector: 'CallExpression[callee.property.name="waitForTimeout"]',
          message: 'Wait for what the page says or the device keeps; time alone proves nothing.',
        },
      ],
    },
  },
  {
    // A rule set again replaces the general one, so the general patterns are repeated in these lists.
    files: ['lib/domain/**'],
    rules: {
      'no-restricted-globals': ['error', ...forbiddenGlobals],
      'no-restricted-syntax': ['error', ownKind, ...forbiddenSyntax],
      'no-restricted-imports': ['error', { patterns: forbiddenImports }],
    },
  },
);
