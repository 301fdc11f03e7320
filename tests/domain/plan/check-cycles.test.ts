import { describe, expect, test } from 'vitest';
import { checkPlan } from '@/lib/domain/plan/check';
import { bracket, expectOnly, one, operation, spoilt } from '@/tests/support/sound-plan';
import type { Case, Edit } from '@/tests/support/sound-plan';

const cases: readonly Case[] = [
  {
    given: 'two operations',
    edits: [
      ['operations/G', { ...operation, needs: ['H'] }],
      ['operations/H', { ...operation, needs: ['G'] }],
    ],
    at: 'operations/G/needs/0',
  },
  one('its own finish', 'operations/D/needs', ['D'], 'operations/D/needs/0'),
  one('a check of its own body', 'operations/E/needs', ['K-2'], 'operations/E/needs/0'),
  {
    given: 'a joint that it alone brings to final',
    edits: [['operations/E/needs', ['J-2 final']]],
    at: 'operations/E/needs/0',
  },
  {
    given: 'a wait',
    edits: [
      ['operations/D/needs', ['wait F']],
      ['operations/F/needs', ['D']],
      ['operations/F/wait', '1 h'],
    ],
    at: 'operations/D/needs/0',
  },
  one('covers', 'operations/E/covers', ['J-2'], 'operations/E/covers/0'),
  one('before', 'joints/J-2/before', 'E'),
  one('before, of a check', 'checks/K-2/before', 'E'),
  {
    given: 'a joint that the only other operation brings to final on some cars alone',
    edits: [
      ['joints/J-5', bracket],
      ['operations/G', { ...operation, needs: ['J-5 final'], body: ['final J-5'] }],
      ['operations/H', { ...operation, body: ['final J-5'], when: 'heater=fitted' }],
    ],
    at: 'operations/G/needs/0',
  },
  {
    given: 'a final that waits for what waits for it',
    edits: [
      ['joints/J-2/finalNeeds', ['F']],
      ['operations/F/needs', ['E']],
    ],
    at: 'joints/J-2/finalNeeds/0',
  },
];

test.each(cases)('a ring: $given', (given) => expectOnly('cycle', given));

describe('what is told of a ring', () => {
  test('shows the whole ring, once', () => {
    const edits: Edit[] = [
      ['operations/G', { ...operation, needs: ['I', 'wait I'] }],
      ['operations/H', { ...operation, needs: ['G'] }],
      ['operations/I', { ...operation, wait: '1 h', needs: ['H'] }],
    ];
    const problems = checkPlan(spoilt(edits));
    expect(problems.map(({ details }) => details)).toEqual([{ cycle: 'G → I → H → G' }]);
    expect(problems[0]?.path).toEqual(['operations', 'G', 'needs', 0]);
  });

  test('does not tell a way round that other work makes good', () => {
    const edits: Edit[] = [
      ['joints/J-5', bracket],
      ['operations/G', { ...operation, needs: ['J-5 final', 'G'], body: ['final J-5'] }],
      ['operations/H', { ...operation, body: ['final J-5'] }],
      ['operations/I', { ...operation, body: ['final J-5'] }],
    ];
    expect(checkPlan(spoilt(edits)).map(({ details }) => details['cycle'])).toEqual(['G → G']);
  });

  test('tells two rings that share an operation apart', () => {
    const edits: Edit[] = [
      ['operations/G', { ...operation, needs: ['H', 'I'] }],
      ['operations/H', { ...operation, needs: ['G'] }],
      ['operations/I', { ...operation, needs: ['G'] }],
    ];
    expect(checkPlan(spoilt(edits)).map(({ details }) => details['cycle'])).toEqual([
      'G → H → G',
      'G → I → G',
    ]);
  });

  test('does not tell what only waits behind a ring', () => {
    const edits: Edit[] = [
      ['operations/G', { ...operation, needs: ['G'] }],
      ['operations/A/needs', ['G']],
    ];
    expect(checkPlan(spoilt(edits)).map(({ details }) => details['cycle'])).toEqual(['G → G']);
  });
});
