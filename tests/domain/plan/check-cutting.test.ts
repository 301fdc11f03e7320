/** What the plan check says of pieces and the lengths they are cut from. Invented. */
import { describe, expect, test } from 'vitest';
import type { CuttingCode } from '@/lib/domain/plan/problem';
import { CUT_STUD, expectOnly, one, spoilt, told } from '@/tests/support/sound-plan';
import type { Case, Edit } from '@/tests/support/sound-plan';

/** `D` cuts these pieces and says that it uses so much. */
const cutting = (
  quantity: string | number | undefined,
  pieces: Readonly<Record<string, string>>,
  at: string,
): Case => ({
  given: `${JSON.stringify(pieces)} of ${String(quantity)}`,
  edits: [
    ...CUT_STUD,
    ['operations/D/pieces', { STUD: pieces }],
    ...(quantity === undefined ? [] : [['operations/D/consumables', { STUD: quantity }] as const]),
  ],
  at,
});

const cases: Readonly<Record<CuttingCode, readonly Case[]>> = {
  'pieces-without-lengths': [
    one('an item counted', 'operations/D/pieces', { BOLT: { rail: '2 × 3 m' } }, 'operations/D/pieces/BOLT'),
  ],
  'piece-too-long': [
    cutting('6 m', { long: '5981 mm' }, 'operations/D/pieces/STUD/long'),
    cutting('9 m', { brace: '2 × 1.5 m', long: '236 in' }, 'operations/D/pieces/STUD/long'),
  ],
  'pieces-against-quantity': [
    cutting('5.9 m', { rail: '2 × 3 m' }, 'operations/D/consumables/STUD'),
    cutting('6.7 m', { rail: '2 × 3 m' }, 'operations/D/consumables/STUD'),
    cutting(7, { rail: '2 × 3 m' }, 'operations/D/consumables/STUD'),
  ],
  'pieces-without-quantity': [cutting(undefined, { rail: '2 × 3 m' }, 'operations/D/pieces/STUD')],
};

describe.each(Object.keys(cases) as CuttingCode[])('%s', (code) => {
  test.each(cases[code])('$given', (given) => expectOnly(code, given));
});

describe('what is no problem', () => {
  const fine: readonly [string, ...Edit[]][] = [
    [
      'pieces as long as the room between the ends, rounded, and with their cuts',
      ...CUT_STUD,
      ['operations/D/pieces', { STUD: { rail: '5980 mm', stub: '2 × 12.5 mm' } }],
      ['operations/D/consumables', { STUD: '6.00 m' }],
    ],
    [
      'pieces of what is counted in something else',
      ...CUT_STUD,
      ['items/STUD/unit', 'pc'],
      ['operations/D/pieces', { STUD: { rail: '3 m' } }],
      ['operations/D/consumables', { STUD: 1 }],
    ],
  ];
  test.each(fine.map(([what, ...edits]) => ({ what, edits })))('$what', ({ edits }) => {
    expect(told(spoilt(edits))).toEqual([]);
  });
});
