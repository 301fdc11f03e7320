import { describe, test } from 'vitest';
import type { TextCode } from '@/lib/domain/plan/problem';
import { CUT_STUD, expectOnly, one } from '@/tests/support/sound-plan';
import type { Case, Edit } from '@/tests/support/sound-plan';

const cases: Readonly<Record<TextCode, readonly Case[]>> = {
  'stages-missing': [
    {
      given: 'no stage at all',
      edits: (['operations', 'joints', 'checks', 'stopgaps', 'items'] as const)
        .map((section): Edit => [section, undefined])
        .concat([['stages', {}]]),
      at: 'stages',
    },
  ],
  'key-unreadable': [
    one('a key with a space', 'parts/front axle', { name: 'Axle' }),
    one('a key of the language', 'cautions/constructor', { hazard: 'h', text: 't' }),
  ],
  'need-unreadable': [
    one('an unknown level', 'operations/B/needs/0', 'J-1 tight'),
    one('in finalNeeds', 'joints/J-1/finalNeeds', ['+'], 'joints/J-1/finalNeeds/0'),
    one('in an entry list', 'stages/S2/entry/0', 'until A'),
  ],
  'body-unreadable': [one('an unknown verb', 'operations/C/body/0', 'fasten P-1')],
  'reference-unreadable': [
    one('in covers', 'operations/C/covers/0', 'J-1 final'),
    one('in disturbs', 'joints/J-1/disturbs/0', '@L'),
    one('in slaveIn', 'stopgaps/G-1/slaveIn/0', 'J-1@'),
  ],
  'when-unreadable': [one('no choice', 'parts/P-1/when', 'heater')],
  'specification-unreadable': [
    one('no tolerance', 'joints/J-1/torque', '45 N·m'),
    one('low above high', 'joints/J-1/torque', '48 to 42 N·m'),
  ],
  'window-unreadable': [
    one('an angle', 'joints/J-1/angle', '90'),
    one('a step of a sequence', 'joints/J-1/sequence', { seat: 'well' }, 'joints/J-1/sequence/seat'),
  ],
  'limit-unreadable': [one('a limit', 'checks/K-1/values/gap', '2 mm')],
  'duration-unreadable': [
    one('a wait', 'operations/A/wait', 'overnight'),
    one('outside work', 'operations/A/outside', '7'),
    one('a part away', 'parts/P-1/outside', 'a week'),
    one('a holding time', 'checks/K-1/holds', '10'),
  ],
  'reuse-unreadable': [one('a reuse rule', 'items/STUD/reuse', 'never')],
  'repeat-unusable': [
    one('none', 'checks/K-1/repeat', 0),
    one('a fraction', 'checks/K-1/repeat', 1.5),
    one('too many', 'checks/K-1/repeat', 1e9),
  ],

  'key-used-twice': [
    one('a part named as a stage', 'parts/S1', { name: 'Stub' }),
    one('an item named as an operation', 'items/A', { name: 'Arm' }),
  ],
  'reference-dangling': [
    one('a need', 'operations/B/needs/0', 'AA'),
    one('an entry', 'stages/S2/entry/0', 'X-1 final'),
    one('a need of a final', 'joints/J-1/finalNeeds', ['+engine'], 'joints/J-1/finalNeeds/0'),
    one('a body line', 'operations/A/body/2', 'fit P-9'),
    one('covers', 'operations/C/covers/0', 'J-9'),
    one('disturbs', 'joints/J-1/disturbs/0', 'J-9'),
    one('clears', 'joints/J-1/clears/0', 'blod'),
    one('loadedBy', 'joints/J-1/loadedBy/0', 'wait'),
    one('slaveIn', 'stopgaps/G-1/slaveIn/0', 'J-9'),
    one('before', 'checks/K-1/before', 'Z'),
    one('before, of a joint', 'joints/J-1/before', 'Z'),
    one('due, of a joint', 'joints/J-1/due', 'S9'),
    one('due, of an operation', 'operations/A/due', 'S9'),
    one('due, of a check', 'checks/K-1/due', 'S9'),
    one('outBy', 'stopgaps/G-1/outBy', 'S9'),
    one('stage', 'operations/D/stage', 'S9'),
    one('sharesRoomWith', 'stages/S1/sharesRoomWith', 'S9'),
    one('cautions', 'operations/A/cautions/0', 'C-9'),
    one('hardware of a joint', 'joints/J-1/hardware/NUT', 4),
    one('hardware of an operation', 'operations/A/hardware/NUT', 4),
    one('a substitute', 'items/BOLT/substitutes/NUT', {}),
    one('onlyIn', 'items/BOLT/substitutes/STUD/onlyIn', ['J-9'], 'items/BOLT/substitutes/STUD/onlyIn/0'),
    one('notIn', 'items/BOLT/substitutes/STUD/notIn/0', 'J-9'),
    one('dueAgain', 'joints/J-2/hardware/BOLT/dueAgain/0', 'Z'),
    one('madeOn', 'operations/C/madeOn', 'P-9'),
    one('pieces', 'operations/C/pieces', { TUBE: { rail: '2 × 3 m' } }, 'operations/C/pieces/TUBE'),
    one('about', 'checks/K-1/about', 'P-9'),
    one('a key of the language', 'operations/B/needs/0', 'constructor'),
  ],
  'reference-wrong-kind': [
    one('check of a joint', 'operations/A/body/2', 'check J-1'),
    one('stage of an operation', 'operations/D/stage', 'A'),
    one('a need on a stage', 'operations/D/needs', ['S1'], 'operations/D/needs/0'),
    one('waiting for a check', 'operations/D/needs', ['wait K-1'], 'operations/D/needs/0'),
  ],
  'need-incomplete': [
    one('a joint without a level', 'operations/D/needs', ['J-1'], 'operations/D/needs/0'),
    one('a stopgap without out', 'operations/D/needs', ['G-1'], 'operations/D/needs/0'),
    one('a condition without sign', 'operations/D/needs', ['weight'], 'operations/D/needs/0'),
    one('a part without its word', 'operations/D/needs', ['P-1'], 'operations/D/needs/0'),
  ],
  'photo-unknown': [one('another slot', 'operations/C/needs/5', 'photo B/stump')],
  'option-unknown': [one('an option', 'parts/P-1/when', 'heaters=none')],
  'choice-unknown': [one('a choice', 'parts/P-1/when', 'not heater=fit')],
  'usual-not-a-choice': [one('the usual', 'options/heater/usual', 'maybe')],
  'position-unknown': [
    one('a position of another axis', 'operations/F/needs/1', 'J-2@FL final'),
    one('a thing without positions', 'operations/F/needs/0', 'A@L'),
  ],
  'length-unreadable': [
    one(
      'a length without a unit',
      'items/STUD/cut',
      { lengths: ['6'], kerf: '3 mm' },
      'items/STUD/cut/lengths/0',
    ),
    one('no kerf', 'items/STUD/cut', { lengths: ['6 m'], kerf: '' }, 'items/STUD/cut/kerf'),
    one(
      'a torque',
      'items/STUD/cut',
      { lengths: ['6 m'], kerf: '0 mm', ends: '3 N·m' },
      'items/STUD/cut/ends',
    ),
    one(
      'words',
      'items/STUD/cut',
      { lengths: ['6 m'], kerf: '0 mm', keep: 'long ones' },
      'items/STUD/cut/keep',
    ),
  ],
  'pieces-unreadable': [
    one('no length', 'operations/D/pieces', { STUD: { rail: '2' } }, 'operations/D/pieces/STUD/rail'),
    one('none of it', 'operations/D/pieces', { STUD: { rail: '0 × 3 m' } }, 'operations/D/pieces/STUD/rail'),
    one(
      'a thousand',
      'operations/D/pieces',
      { STUD: { rail: '1000 × 3 m' } },
      'operations/D/pieces/STUD/rail',
    ),
    one(
      'nothing long',
      'operations/D/pieces',
      { STUD: { rail: '2 × 0 mm' } },
      'operations/D/pieces/STUD/rail',
    ),
  ].map((each) => ({ ...each, edits: [...each.edits, ...CUT_STUD] })),
  'position-unsettled': [
    {
      given: 'sides from a numbered thing',
      edits: [
        ['operations/F/repeat', 3],
        ['operations/F/needs/0', 'E'],
      ],
      at: 'operations/F/needs/0',
    },
  ],
};

const codes = Object.keys(cases) as TextCode[];

describe.each(codes)('%s', (code) => {
  test.each(cases[code])('$given', (given) => expectOnly(code, given));
});
