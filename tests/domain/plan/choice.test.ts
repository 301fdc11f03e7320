import { describe, expect, test } from 'vitest';
import { effectOf } from '@/lib/domain/plan/choice';
import { plan } from '@/tests/support/shop';

const document = plan({
  options: {
    heater: { name: 'Heater', choices: ['fitted', 'none'], usual: 'fitted' },
    axle: { name: 'Rear axle', choices: ['graded', 'rebuilt'] },
    colour: { name: 'Hoses', choices: ['black', 'red'] },
  },
  stages: { S1: { name: 'Steering' } },
  operations: {
    'ST-025': { name: 'Cover plate', stage: 'S1', when: 'heater=none' },
    'ST-030': { name: 'Heater in', stage: 'S1', when: 'heater=fitted' },
    'ST-040': { name: 'Both', stage: 'S1', when: 'heater=fitted and axle=rebuilt' },
    'ST-050': { name: 'Always', stage: 'S1' },
  },
  joints: {
    'J-603': {
      name: 'Heater pipe',
      fasteners: 1,
      method: 'firm',
      torque: 'no value published',
      when: 'not heater=none',
    },
  },
  parts: { 'P-9': { name: 'heater', when: 'heater=fitted' } },
});

describe('what a choice changes', () => {
  test.each([
    // `ST-040` hangs on the axle too, of which nothing is known yet: in neither list, unless the heater alone settles it.
    ['heater', 'fitted', {}, ['ST-030', 'J-603', 'P-9'], ['ST-025']],
    ['heater', 'none', {}, ['ST-025'], ['ST-030', 'ST-040', 'J-603', 'P-9']],
    ['heater', 'fitted', { axle: 'rebuilt' }, ['ST-030', 'ST-040', 'J-603', 'P-9'], ['ST-025']],
    ['axle', 'graded', { heater: 'fitted' }, [], ['ST-040']],
    ['colour', 'red', {}, [], []],
  ] as const)('%s=%s with %o', (option, choice, chosen, brings, leavesOut) => {
    expect(effectOf(document, chosen, option, choice)).toEqual({ brings, leavesOut });
  });
});
