import { describe, expect, test } from 'vitest';
import { checkPlan } from '@/lib/domain/plan/check';
import type { WorkCode } from '@/lib/domain/plan/problem';
import { problemSentence } from '@/lib/domain/plan/problem-sentence';
import { bracket, expectOnly, one, operation, sound, spoilt, told } from '@/tests/support/sound-plan';
import type { Case, Edit } from '@/tests/support/sound-plan';

const cases: Readonly<Record<Exclude<WorkCode, 'cycle'>, readonly Case[]>> = {
  'need-never-in-time': [
    {
      given: 'work that may not start ahead',
      edits: [
        ['operations/A/needs', ['D']],
        ['operations/D/notBefore', true],
      ],
      at: 'operations/A/needs/0',
    },
    {
      given: 'a stage whose work may not start ahead',
      edits: [
        ['stages/S3/entry', ['D']],
        ['stages/S3/notBefore', true],
      ],
      at: 'stages/S3/entry/0',
    },
    {
      given: 'before',
      edits: [
        ['checks/K-2/before', 'B'],
        ['operations/E/notBefore', true],
      ],
      at: 'checks/K-2/before',
    },
  ],
  'need-of-later-stage': [
    one('work of a later stage', 'operations/A/needs', ['D'], 'operations/A/needs/0'),
    one('an operation due earlier than its need', 'operations/B/needs/1', 'K-2'),
    one('a need of a final', 'joints/J-1/finalNeeds', ['D'], 'joints/J-1/finalNeeds/0'),
    one('the entry of a stage on its own work', 'stages/S3/entry', ['D'], 'stages/S3/entry/0'),
    one('the entry of the first stage', 'stages/S1/entry', ['A'], 'stages/S1/entry/0'),
  ],
  'due-before-stage': [
    one('an operation', 'operations/D/due', 'S1'),
    one('a joint', 'joints/J-1/due', 'S1'),
    one('a check', 'checks/K-1/due', 'S1'),
  ],
  'wait-without-time': [one('no time', 'operations/A/wait', undefined, 'operations/B/needs/1')],
  'condition-never-set': [one('no setter', 'operations/B/body/1', 'photo wheels', 'operations/C/needs/1')],
  'cleared-for-good': [one('a setter that runs once', 'operations/D/redo', undefined, 'joints/J-1/clears/0')],
  'irreversible-unmeasured': [
    one('only a visual check', 'checks/K-1/kind', 'visual', 'operations/C/irreversible'),
    one('no check', 'operations/A/irreversible', true),
  ],

  'stopgap-never-out': [one('never out', 'operations/B/body/4', 'photo pin', 'stopgaps/G-1')],
  'stopgap-never-placed': [one('never placed', 'operations/A/body/1', 'photo pin', 'stopgaps/G-1')],
  'stopgap-out-before-placed': [
    {
      given: 'placed after its gate',
      edits: [['operations/D/body', ['set bled', 'place G-1']]],
      at: 'stopgaps/G-1/outBy',
    },
  ],
  'stopgap-out-late': [one('taken out after its gate', 'stopgaps/G-1/outBy', 'S1')],

  'pattern-not-each-once': [
    one('one twice', 'joints/J-1/pattern', [1, 2, 3, 3]),
    one('one missing', 'joints/J-1/pattern', [1, 2, 3]),
    one('one beyond', 'joints/J-1/pattern', [1, 2, 3, 5]),
    one('one more', 'joints/J-1/pattern', [1, 2, 3, 4, 4]),
  ],
  'torque-missing': [one('no torque', 'joints/J-1/torque', undefined, 'joints/J-1/torque')],
  'torque-unit': [one('a length', 'joints/J-1/torque', '45 ± 3 mm')],
  'torque-without-source': [
    one('no source', 'joints/J-1/source', undefined, 'joints/J-1/source'),
    one('a blank source', 'joints/J-1/source', ' '),
    {
      given: 'a sequence with a value',
      edits: [
        ['joints/J-1/method', 'sequence'],
        ['joints/J-1/torque', undefined],
        ['joints/J-1/sequence', { seat: '20 ± 2 N·m', pin: 'done' }],
        ['joints/J-1/source', undefined],
      ],
      at: 'joints/J-1/source',
    },
  ],
  'no-value-yet': [
    one('due at verified', 'joints/J-1/torque', 'no value yet', 'joints/J-1/torque', { rank: 'gap' }),
    {
      given: 'due at snug',
      edits: [
        ['joints/J-2/torque', 'no value yet'],
        ['joints/J-2/dueLevel', 'snug'],
      ],
      at: 'joints/J-2/torque',
      rank: 'hint',
    },
  ],
  'firm-with-value': [
    one('a window', 'joints/J-1/method', 'firm', 'joints/J-1/torque'),
    {
      given: 'nothing said',
      edits: [
        ['joints/J-1/method', 'firm'],
        ['joints/J-1/torque', undefined],
      ],
      at: 'joints/J-1/torque',
    },
  ],
  'no-value-not-firm': [one('click', 'joints/J-1/torque', 'no value published')],
  'angle-missing': [one('no angle', 'joints/J-1/method', 'angle', 'joints/J-1/angle')],
  'angle-unit': [one('a torque', 'joints/J-1/angle', '90 ± 5 N·m')],
  'sequence-missing': [one('no steps', 'joints/J-1/method', 'sequence', 'joints/J-1/sequence')],
  'joint-not-worked': [
    one('in no body', 'joints/J-3', { ...sound.joints?.['J-1'], clears: [], disturbs: [], due: 'S3' }),
  ],
  'joint-never-there': [
    one('only snug', 'operations/E/body/0', 'snug J-2', 'joints/J-2'),
    {
      given: 'only opened, and due at snug',
      edits: [
        ['joints/J-2/dueLevel', 'snug'],
        ['operations/E/body/0', 'open J-2'],
      ],
      at: 'joints/J-2',
    },
  ],
  'critical-without-verify': [one('no method', 'joints/J-1/verify', undefined, 'joints/J-1/verify')],
  'verified-without-verify': [one('no method', 'joints/J-2/dueLevel', 'verified', 'joints/J-2/verify')],
  'hardware-uneven': [one('three for four', 'joints/J-1/hardware/BOLT', 3)],

  'check-not-worked': [one('in no body', 'operations/E/body/1', 'photo side', 'checks/K-2')],
  'check-in-several': [
    {
      given: 'two bodies',
      edits: [['operations/D/body', ['set bled', 'check K-1']]],
      at: 'checks/K-1',
    },
  ],
  'limit-without-source': [one('no source', 'checks/K-1/source', undefined, 'checks/K-1/source')],
};

const codes = Object.keys(cases) as Exclude<WorkCode, 'cycle'>[];

test('nothing can be said against the sound plan', () => {
  expect(checkPlan(sound)).toEqual([]);
});

test('a plan of stages and operations alone has no problem', () => {
  const stages = { S1: { name: 'Frame' }, S2: { name: 'Axle' } };
  const operations = { A: { ...operation }, B: { ...operation, stage: 'S2', needs: ['A'] } };
  expect(checkPlan({ plan: 'Corbel 54', revision: '1', stages, operations })).toEqual([]);
});

describe.each(codes)('%s', (code) => {
  test.each(cases[code])('$given', (given) => expectOnly(code, given));
});

describe('what is no problem', () => {
  const fine: readonly [string, ...Edit[]][] = [
    [
      'a need on what the options switch off',
      ['operations/A/needs', []],
      ['operations/F/when', 'heater=none'],
    ],
    [
      'firm where no value is published',
      ['joints/J-1/method', 'firm'],
      ['joints/J-1/torque', 'no value published'],
      ['joints/J-1/source', undefined],
    ],
    ['turns for an angle', ['joints/J-1/method', 'angle'], ['joints/J-1/angle', '0.25 ± 0.05 turn']],
    ['an order by numbers', ['joints/J-1/pattern', [4, 2, 3, 1]]],
    ['uneven hardware for the joint', ['joints/J-1/hardware/BOLT', { quantity: 3, per: 'joint' }]],
    [
      'an ad hoc stopgap',
      ['stopgaps/G-2', { name: 'Tie', quantity: 1, outBy: 'S3', adHoc: true }],
      ['operations/D/body', ['set bled', 'place G-2']],
    ],
    ['a setter that may be run again', ['operations/D/redo', undefined], ['operations/D/repeatable', true]],
    ['a caution named as a stage', ['cautions/S1', { hazard: 'Fire', text: 'Mind it.' }]],
    [
      'the same joint snug, then final in one operation that needs its neighbour',
      ['joints/J-2/finalNeeds', ['K-2']],
    ],
    [
      'work of a later stage, due later',
      ['operations/A/due', 'S3'],
      ['operations/A/needs', []],
      ['stages/S2/entry', []],
      ['operations/B/due', 'S3'],
      ['operations/B/needs/0', 'D'],
      ['operations/B/needs/1', 'wait A'],
      ['stopgaps/G-1/outBy', 'S3'],
    ],
    [
      'a check in two operations that no car has both of',
      ['operations/G', { ...operation, stage: 'S3', when: 'heater=none', body: ['check K-2@*'] }],
    ],
    [
      'rings that no choice of options closes',
      ['operations/G', { ...operation, when: 'heater=none', needs: ['H'] }],
      ['operations/H', { ...operation, needs: ['I'] }],
      ['operations/I', { ...operation, when: 'heater=fitted', needs: ['G'] }],
    ],
    [
      'two operations that wait for lines of each other',
      ['operations/E/body', ['snug J-2', 'final J-2', 'check K-2']],
      ['operations/G', { ...operation, stage: 'S3', body: ['snug J-4', 'final J-4'] }],
      ['joints/J-4', { ...bracket, finalNeeds: ['J-2@* snug'] }],
      ['joints/J-2/finalNeeds', ['J-4 snug']],
    ],
    [
      'a need that a second operation clears where the first waits for it itself',
      ['joints/J-5', bracket],
      ['operations/G', { ...operation, needs: ['J-5 final'], body: ['final J-5'] }],
      ['operations/H', { ...operation, body: ['final J-5'] }],
    ],
    [
      'a ring through a joint that those cars have not',
      ['joints/J-5', { ...bracket, when: 'heater=none' }],
      ['operations/G', { ...operation, when: 'heater=fitted', needs: ['J-5 final'], body: ['final J-5'] }],
    ],
    [
      'a joint due at snug that is only snug',
      ['joints/J-2/dueLevel', 'snug'],
      ['operations/E/body/0', 'snug J-2'],
      ['operations/F/needs', ['J-2@L snug']],
    ],
    ['a condition that must be false and that nothing sets', ['operations/D/body', []]],
    [
      'later work that no car has beside what needs it',
      ['operations/G', { ...operation, when: 'heater=none', needs: ['H'] }],
      ['operations/H', { ...operation, stage: 'S3', when: 'heater=fitted' }],
    ],
  ];
  test.each(fine.map(([what, ...edits]) => ({ what, edits })))('$what', ({ edits }) => {
    expect(told(spoilt(edits))).toEqual([]);
  });
});

describe('what a problem says', () => {
  const sentenceAfter = (...edits: Edit[]): string => checkPlan(spoilt(edits)).map(problemSentence).join(' ');

  test('names the nearest key of the kind that is wanted', () => {
    expect(sentenceAfter(['joints/J-1/clears/0', 'blod'])).toContain('Did you mean “bled”?');
    expect(sentenceAfter(['operations/D/stage', 'S33'])).toContain('Did you mean “S3”?');
  });

  test('names the positions that would be right', () => {
    expect(sentenceAfter(['operations/F/needs/1', 'J-2@FL final'])).toContain('L, R');
  });

  test('everything at once', () => {
    const document = spoilt([
      ['joints/J-1/torque', '45'],
      ['operations/D/stage', 'S9'],
      ['checks/K-1/kind', 'visual'],
    ]);
    expect(told(document)).toHaveLength(3);
  });
});
