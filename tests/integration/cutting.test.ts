/** What the cutting page says where there is nothing, and where a plan is not proved. Lengths are invented. */
import { expect, test } from 'vitest';
import { exact } from '@/lib/domain/base/exact';
import { cutLists } from '@/lib/domain/shop/cut-list';
import type { CuttingPlan } from '@/lib/domain/shop/cutting';
import { cuttingScore } from '@/lib/domain/shop/cutting';
import { openDatabase } from '@/lib/server/database';
import { cutDrawing } from '@/lib/server/queries/cutting/drawing';
import { cuttingView } from '@/lib/server/queries/cutting/view';
import { cuttingAnswers } from '@/lib/solve/cutting-answers';
import { compilePlan } from '@/lib/domain/plan/compile';
import { freshDatabase } from '@/tests/support/postgres';

const plan = compilePlan(
  {
    plan: 'Short',
    revision: '1',
    stages: { S1: { name: 'Frame' } },
    operations: {
      A: { name: 'Cut', stage: 'S1', pieces: { T60: { rail: '2 × 2400 mm', brace: '1150 mm' } } },
    },
    items: { T60: { name: 'tube', cut: { lengths: ['3 m'], kerf: '3 mm', ends: '10 mm', keep: '300 mm' } } },
  },
  {},
);
const rails = [
  { car: 'N-1', operation: 'A', run: 1, item: 'T60', piece: 'rail', length: exact(2400), count: 2 },
  { car: 'N-1', operation: 'A', run: 1, item: 'T60', piece: 'brace', length: exact(1150), count: 1 },
];
const cars = [{ id: 'N-1', chassis: 'N-1', colour: 'Cream' }];

/** With two remnants on the rack: one holds a rail, one nothing of it. */
const [list] = cutLists([plan], rails, {
  T60: [
    { key: 'R-1', length: exact(2450) },
    { key: 'R-2', length: exact(900) },
  ],
}).lists;
if (list?.problem === undefined || list.problem === null) throw new Error('no list');
const { problem, marked } = list;
const draw = { problem, marked, cars };

test('no car, nothing to cut, nothing to draw', async () => {
  const place = await freshDatabase();
  const db = openDatabase(place.url, 2);
  try {
    const view = await cuttingView(db, ['C54-014'], '2026-11-25T08:00:00Z');
    expect(view).toMatchObject({
      says: 'No car stands on the floor.',
      cars: [],
      items: [],
      toDraw: [],
      notes: [],
    });
  } finally {
    await db.$disconnect();
    await place.drop();
  }
});

test('remnants come first; what is proved stands with its reason', async () => {
  const [answer] = cuttingAnswers([problem], 5);
  if (answer === undefined) throw new Error('not asked');
  const drawing = cutDrawing(draw, await answer);
  expect(drawing.verdict).toEqual({
    isProved: true,
    says: 'Two new lengths, the fewest.',
    why: '5.95 m of parts; every plan with fewer was ruled out.',
  });
  expect(drawing.bars.map(({ says }) => says)).toEqual([
    'remnant R-1, 2,450 mm: A 2,400; nothing to keep',
    'length 1, 3,000 mm: A 2,400; keep 577',
    'length 2, 3,000 mm: B 1,150; keep 1,827',
  ]);
  // Asked again it is the same answer, not another thread's.
  expect(cuttingAnswers([{ ...problem }], 5)[0]).toBe(answer);
});

test('one that is not proved says what is known, and one that was not found leaves the list', () => {
  const piece = (mark: string) => ({ piece: `${mark} N-1`, count: 1 });
  const found: CuttingPlan = [
    { stock: 'new 1', times: 2, pieces: [piece('A')] },
    { stock: 'new 1', times: 1, pieces: [piece('B')] },
  ];
  const proved = { newLengths: false, taken: false };
  const score = cuttingScore(problem, found);
  const drawing = cutDrawing(draw, { plan: found, score, bounds: { newLengths: 2 }, proved });
  expect(drawing.verdict).toEqual({
    isProved: false,
    says: 'Best found: three new lengths.',
    why: '5.95 m of parts. No plan has fewer than 2; whether one has fewer than 3 is not known.',
  });
  expect(drawing.bars).toHaveLength(3);
  const none = cutDrawing(draw, { plan: null, score: null, bounds: { newLengths: 0 }, proved });
  expect(none.bars).toEqual([]);
  expect(none.verdict.isProved).toBe(false);
});
