import { describe, expect, test } from 'vitest';
import { COMMANDS } from '@/lib/domain/authority';
import { claimSchema } from '@/lib/wire/command-schema';
import { readInstant } from '@/lib/wire/shop-day';

const schema = claimSchema(readInstant('Europe/Rome'));
const messages = (claim: unknown): string[] =>
  schema.safeParse(claim).error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) ?? [];

describe('the shape of a claim', () => {
  test('there is one for every command', () => {
    expect(schema.options.map(({ shape }) => shape.type.value).sort()).toEqual(Object.keys(COMMANDS).sort());
  });

  test.each([
    ['Nm', 'N·m'],
    ['lbf ft', 'lbf·ft'],
    ['lbf.in', 'lbf·in'],
  ])('a unit from a plain keyboard: %s is %s', (typed, unit) => {
    const claim = {
      type: 'report-over-torque',
      car: 'C1',
      joint: 'J-1',
      fastener: 1,
      reading: '70',
      unit: typed,
    };
    expect(schema.parse(claim)).toEqual({ ...claim, unit });
  });

  test('a unit that could mean two is refused with those that can’t', () => {
    const claim = { type: 'add-adapter', adapter: 'A', name: 'crow', extension: '50', unit: 'lb ft' };
    expect(messages(claim)).toEqual([expect.stringMatching(/^unit: “lb ft” is no unit.*N·m.*Nm, lbf ft/)]);
  });

  test('a time is read in the zone of the shop', () => {
    const claim = { type: 'suspect-tool', tool: 'T', reason: 'dropped', from: '2026-11-25T08:00' };
    expect(schema.parse(claim)).toEqual({ ...claim, from: '2026-11-25T07:00:00.000Z' });
  });

  test('a field that does not belong there is refused', () => {
    expect(messages({ type: 'deliver-car', car: 'C1', to: 'RO' })).toHaveLength(1);
  });

  test.each(['constructor', '__proto__', 'toString', ' ', ''])(
    '“%s” is no name to keep rows under',
    (car) => {
      expect(messages({ type: 'deliver-car', car })).not.toEqual([]);
    },
  );

  test('nor as the name of an option', () => {
    expect(
      messages({ type: 'start-car', car: 'C', plan: 'p', chassis: 'x', options: { constructor: 'a' } }),
    ).not.toEqual([]);
  });

  test.each([
    [
      'a day that does not exist',
      { type: 'receive-lot', lot: 'L', item: 'B', quantity: 1, expires: '2026-02-30' },
    ],
    ['a fastener number of 0', { type: 'open-joint', car: 'C', joint: 'J', fasteners: [0] }],
    ['half a cycle', { type: 'open-joint', car: 'C', joint: 'J', cycle: 1.5 }],
    ['no reason', { type: 'clear-lot', lot: 'L', reason: '  ' }],
    ['a number for a reading', { type: 'final-joint', car: 'C', joint: 'J', readings: [45] }],
  ])('%s is refused', (_, claim) => {
    expect(messages(claim)).toHaveLength(1);
  });
});
