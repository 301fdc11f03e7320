/** Every reason in words. Names are invented. */
import { expect, test } from 'vitest';
import { exact } from '@/lib/domain/base/exact';
import type { DatedLine } from '@/lib/domain/shop/demand';
import type { NeedCause } from '@/lib/domain/shop/need-line';
import { coveredWords, reasonsOf } from '@/lib/domain/shop/need-words';
import type { NeedNames } from '@/lib/domain/shop/need-words';

const NAMES: Readonly<Record<string, string>> = {
  'J-110': 'spring front eye',
  'WH-090': 'Caster and camber',
  'LN-010': 'Make the brake lines',
  'TN-M10': 'tube nut M10',
  'DM-set': 'damper set',
};
const names: NeedNames = {
  thing: (_, key) => NAMES[key.split('@')[0] ?? ''] ?? null,
  item: (key) => NAMES[key] ?? null,
  car: (id) => `Corbel ${id}`,
  person: (id) => (id === 'ines' ? 'Ines Harrow' : null),
  day: (day) => `${String(Number(day.slice(8)))} Nov`,
  dayOf: (at) => `${String(Number(at.slice(8, 10)))} Nov`,
};

const line = (cause: NeedCause, more: Partial<DatedLine> = {}): DatedLine => ({
  car: '3',
  item: 'TN-M10',
  what: 'item',
  quantity: exact(1),
  cause,
  at: 'J-110@L',
  before: null,
  due: 0,
  undecided: [],
  by: { day: '2026-11-25', basis: 'now', minutesBefore: 0 },
  ...more,
});
const said = (...lines: readonly DatedLine[]): readonly string[] => reasonsOf({ lines, unit: 'pc' }, names);
const on27: DatedLine['by'] = { day: '2026-11-27', basis: 'plan-minutes', minutesBefore: 900 };

test.each<[NeedCause, string]>([
  [
    { kind: 'opened', at: '2026-11-24T09:00:00.000Z', by: 'ines' },
    '1 for Corbel 3, spring front eye, left (J-110@L), opened on 24 Nov by Ines Harrow, now',
  ],
  [
    { kind: 'opened', at: null, by: null },
    '1 for Corbel 3, spring front eye, left (J-110@L), spent when it was opened, now',
  ],
  [
    { kind: 'reopening', operation: 'WH-090' },
    '1 for Corbel 3, spring front eye, left (J-110@L), opened again in Caster and camber (WH-090), as planned, now',
  ],
  [
    { kind: 'renew', because: 'lot L-1: soft threads.' },
    '1 for Corbel 3, spring front eye, left (J-110@L), to be renewed: lot L-1: soft threads, now',
  ],
  [
    { kind: 'again', operation: 'LN-010', because: 'J-1 was opened', share: exact(1, 10) },
    '1 for Corbel 3, spring front eye, left (J-110@L), due again, 1/10 of it: J-1 was opened, now',
  ],
  [
    { kind: 'condemned', finding: 'F-2' },
    '1 for Corbel 3, spring front eye, left (J-110@L), replaced by F-2, now',
  ],
  [{ kind: 'condemned', finding: null }, '1 for Corbel 3, spring front eye, left (J-110@L), condemned, now'],
  [
    { kind: 'taken', takenFor: '5' },
    '1 for Corbel 3, spring front eye, left (J-110@L), taken for Corbel 5, now',
  ],
  [
    { kind: 'taken', takenFor: '' },
    '1 for Corbel 3, spring front eye, left (J-110@L), taken for another car, now',
  ],
  [{ kind: 'attrition', share: exact(1, 20) }, '1 for Corbel 3, 5 % more for what gets lost'],
  [{ kind: 'in-box', of: 'DM-set' }, '1 for Corbel 3, in the box of damper set'],
])('%o', (cause, words) => {
  expect(said(line(cause))).toEqual([words]);
});

test('lines that differ only in their place are one; another day, car or cause is another', () => {
  const planned: NeedCause = { kind: 'planned' };
  expect(
    said(
      line(planned),
      line(planned, { at: 'J-110@R' }),
      line(planned, { at: 'J-110@R', by: on27 }),
      line(planned, { car: '5' }),
    ),
  ).toEqual([
    '2 for Corbel 3, spring front eye (J-110@L R), planned, now',
    '1 for Corbel 3, spring front eye, right (J-110@R), planned, by 27 Nov',
    '1 for Corbel 5, spring front eye, left (J-110@L), planned, now',
  ]);
});

test('positions that are counted without a gap are said as a run', () => {
  const at = (...positions: readonly number[]): readonly string[] =>
    said(...positions.map((each) => line({ kind: 'planned' }, { at: `J-110@${String(each)}` })));
  expect(at(5, 6, 7)[0]).toContain('(J-110@5 to 7)');
  expect(at(5, 6, 8)[0]).toContain('(J-110@5 6 8)');
});

test('chained work of several joints is one share (D57)', () => {
  const chained = (joint: string): DatedLine =>
    line(
      { kind: 'chained', operation: 'LN-010', joint, behind: 'TN-M10', share: exact(1, 10) },
      { at: 'LN-010', quantity: exact(7, 5) },
    );
  expect(said(chained('J-110@1'), chained('J-110@2'))).toEqual([
    '2.8 for Corbel 3, Make the brake lines (LN-010), done again, 1/5 of it, since tube nut M10 of spring front eye (J-110@1 2) is renewed, now',
  ]);
});

test('what covers it, summed by where it comes from', () => {
  const from = (source: Parameters<typeof coveredWords>[0][number]['source'], isLate = false) => ({
    car: '3',
    by: '2026-11-25',
    quantity: exact(2),
    source,
    isLate,
  });
  const order = { kind: 'order', order: 'PO-3', due: '2026-11-30' } as const;
  expect(
    coveredWords(
      [
        from({ kind: 'lot', lot: 'L-1' }),
        from({ kind: 'lot', lot: 'L-1' }),
        from({ kind: 'donor', lot: 'L-9', car: '3' }),
        from({ kind: 'donor', lot: 'L-8', car: '4' }),
        from(order),
        from(order, true),
      ],
      'pc',
      names,
    ),
  ).toEqual([
    '4 from lot L-1',
    '2 off the donor, lot L-9',
    '2 off the donor of Corbel 4, lot L-8',
    '2 on order PO-3, due 30 Nov',
    '2 on order PO-3, due 30 Nov, late for Corbel 3',
  ]);
});
