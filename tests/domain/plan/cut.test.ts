/** Lengths and pieces as a plan writes them. Invented. */
import { describe, expect, test } from 'vitest';
import { exact } from '@/lib/domain/base/exact';
import { longestRoom, parseLength, parsePieces, readCut } from '@/lib/domain/plan/cut';
import { canonicalJson } from '@/lib/wire/canonical-json';
import { readPlan } from '@/lib/wire/read-plan';

describe('a length', () => {
  test.each([
    ['6 m', exact(6000)],
    ['3150 mm', exact(3150)],
    ['3150mm', exact(3150)],
    ['7.5 m', exact(7500)],
    ['12,5 cm', exact(125)],
    ['1/8 in', exact(254, 80)],
    ['1-1/2 in', exact(381, 10)],
    ['240"', exact(6096)],
  ])('%s', (text, length) => expect(parseLength(text)).toEqual(length));

  test.each(['6', '', 'm', '-6 m', '6 kg', '1,250 mm', '6 m long', '1/0 in'])('not %s', (text) =>
    expect(parseLength(text)).toBeNull(),
  );
});

test('pieces: how many, and how long', () => {
  const two = { count: 2, length: exact(3150) };
  for (const text of ['2 × 3150 mm', '2 x 3150 mm', '2x3150 mm', '2 * 3.15 m'])
    expect(parsePieces(text)).toEqual(two);
  expect(parsePieces('3150 mm')).toEqual({ count: 1, length: exact(3150) });
  for (const text of ['2', '0 × 3 m', '1000 × 3 m', '-1 × 3 m', '2 × 0 mm', '1.5 × 3 m'])
    expect(parsePieces(text)).toBeNull();
});

test('what the longest length leaves between its ends', () => {
  const terms = readCut({ lengths: ['2 m', '6 m', '4 m'], kerf: '3 mm', ends: '10 mm' });
  expect(terms === null ? null : longestRoom(terms)).toEqual(exact(5980));
  expect(readCut({ lengths: ['2 m', 'long'], kerf: '3 mm' })).toBeNull();
});

test('a plan that says nothing of it has the text that its hash was always taken of', () => {
  const yaml = `plan: Corbel 54
revision: '1'
stages: { S1: { name: Frame } }
operations: { A: { name: Cut, stage: S1, consumables: { T60: 13.30 m } } }
items: { T60: { name: tube, unit: m } }
`;
  const { document } = readPlan(yaml);
  expect(document === null ? '' : canonicalJson(document)).toBe(
    '{"items":{"T60":{"name":"tube","unit":"m"}},"operations":{"A":{"consumables":{"T60":"13.30 m"},"name":"Cut","stage":"S1"}},"plan":"Corbel 54","revision":"1","stages":{"S1":{"name":"Frame"}}}',
  );
});
