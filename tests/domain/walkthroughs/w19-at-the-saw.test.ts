/** At the saw: what is sawn leaves the list, rests leave the rack and come onto it, and nothing is sawn twice. Lengths are invented. */
import { describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { carCuts, cutLists } from '@/lib/domain/shop/cut-list';
import { remnantsOf } from '@/lib/domain/shop/remnants';
import { stillToSaw } from '@/lib/domain/shop/sawn';
import { onHand, stockText } from '@/lib/domain/shop/stock';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    T60: {
      name: 'tube 60×40×3',
      unit: 'm',
      cut: { lengths: ['6 m'], kerf: '3 mm', ends: '10 mm', keep: '300 mm' },
    },
  },
  stages: { FR: { name: 'Frame' } },
  operations: {
    'FR-010': {
      name: 'Rails',
      stage: 'FR',
      consumables: { T60: '6.5 m' },
      pieces: { T60: { rail: '2 × 2400 mm', brace: '900 mm' } },
      repeatable: true,
    },
    'FR-020': {
      name: 'Braces',
      stage: 'FR',
      consumables: { T60: '1 m' },
      pieces: { T60: { brace: '900 mm' } },
    },
  },
});

const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.startCar('C2', DOCUMENT);
  shop.does('leo', { type: 'receive-stock', goods: [{ item: 'T60', quantity: '24' }] });
  shop.does('tess', { type: 'count-remnants', item: 'T60', lengths: ['1240 mm', '915 mm'] });
  return shop;
};
const of = (piece: string, length: string, count: number, car = 'C1') => ({ car, piece, length, count });
const bar = (from: 'rest' | 'new', length: string, ...pieces: readonly ReturnType<typeof of>[]) => ({
  from,
  length,
  pieces,
});
const saw = (...bars: readonly (ReturnType<typeof bar> & { readonly left?: string })[]) =>
  ({ type: 'saw-bars', item: 'T60', bars }) as const;
const rack = ({ world }: Shop): readonly string[] =>
  (remnantsOf(world.shop.remnants)['T60'] ?? []).map(({ length }) => toDecimalText(length));
const open = (shop: Shop): readonly string[] =>
  stillToSaw(
    ['C1', 'C2'].flatMap((car) => carCuts(shop.plan(car), shop.car(car)).wanted),
    shop.world.shop.sawn,
  ).map(({ car, operation, piece, count }) => `${car} ${operation} ${String(count)} ${piece}`);

const ALL = ['C1 FR-010 2 rail', 'C1 FR-010 1 brace', 'C1 FR-020 1 brace'];
const OTHER = ['C2 FR-010 2 rail', 'C2 FR-010 1 brace', 'C2 FR-020 1 brace'];

describe('a bar is sawn', () => {
  test('a rest that is used leaves the rack, and what is too short to keep does not go on it', () => {
    const shop = opened();
    shop.does('tom', saw(bar('rest', '915 mm', of('brace', '900 mm', 1))));
    expect(rack(shop)).toEqual(['1240']);
    expect(open(shop)).toEqual(['C1 FR-010 2 rail', 'C1 FR-020 1 brace', ...OTHER]);
    expect(shop.world.shop.remnants['T60']).toMatchObject({ by: 'tess', sawn: { by: 'tom' } });
  });

  test('what is left of a new length is reckoned with its cuts and its ends, and goes on the rack', () => {
    const shop = opened();
    const [event] = shop.does('tom', saw(bar('new', '6 m', of('rail', '2400 mm', 2))));
    // 6000 − 2 × 10 at the ends − 2 × (2400 + 3) = 1174.
    expect(event).toMatchObject({ type: 'bars-sawn', bars: [{ left: '1174 mm' }] });
    expect(rack(shop)).toEqual(['1240', '1174', '915']);
    shop.does('tess', { type: 'count-remnants', item: 'T60', lengths: ['1170 mm'] });
    expect([rack(shop), shop.world.shop.remnants['T60']?.sawn]).toEqual([['1170'], undefined]);
  });

  test('by hand it is as it was measured, or nothing at all, whatever is reckoned', () => {
    const shop = opened();
    shop.does('tom', saw({ ...bar('new', '6 m', of('rail', '2400 mm', 2)), left: '250 mm' }));
    expect(rack(shop)).toEqual(['1240', '915', '250']);
    shop.does('tom', saw({ ...bar('rest', '1240 mm', of('brace', '900 mm', 1)), left: '' }));
    expect(rack(shop)).toEqual(['915', '250']);
  });

  test('all of a list is one act, in which a bar may begin with what one before it left', () => {
    const shop = opened();
    const events = shop.does(
      'tom',
      saw(
        bar('new', '6000 mm', of('rail', '2400 mm', 2)),
        bar('rest', '1174 mm', of('brace', '900 mm', 1)),
        bar('rest', '1240 mm', of('brace', '900 mm', 1)),
        bar('new', '6 m', of('rail', '2400 mm', 2, 'C2')),
      ),
    );
    expect(events).toHaveLength(1);
    expect(open(shop)).toEqual(['C2 FR-010 1 brace', 'C2 FR-020 1 brace']);
    expect(rack(shop)).toEqual(['1174', '915', '337']);
  });

  test('where nobody ever counted, the rack holds what the saw left, and says so', () => {
    const shop = shopWith(DOCUMENT);
    shop.does('tom', saw(bar('new', '6 m', of('rail', '2400 mm', 2))));
    expect(shop.world.shop.remnants['T60']).toMatchObject({ lengths: ['1174 mm'], isUncounted: true });
  });
});

describe('no length counts twice', () => {
  test('stock stays at the saw; the work draws what it uses up when it finishes, once', () => {
    const shop = opened();
    const has = (): string => stockText(onHand(shop.world.stock['T60|'] ?? { came: '0', went: '0' }));
    shop.does(
      'tom',
      saw(bar('new', '6 m', of('rail', '2400 mm', 2)), bar('rest', '915 mm', of('brace', '900 mm', 1))),
    );
    expect(has()).toBe('24');
    shop.perform('tom', 'FR-010');
    expect([has(), open(shop)]).toEqual(['17.5', ['C1 FR-020 1 brace', ...OTHER]]);
  });

  test('work that is done once more wants its pieces anew; a finish that was struck does not', () => {
    const shop = opened();
    shop.does(
      'tom',
      saw(bar('new', '6 m', of('rail', '2400 mm', 2)), bar('rest', '915 mm', of('brace', '900 mm', 1))),
    );
    const finished = shop.perform('tom', 'FR-010').find(({ type }) => type === 'operation-finished');
    shop.does('leo', {
      type: 'strike-signature',
      signature: finished?.meta.command ?? '',
      reason: 'crooked',
    });
    expect(open(shop)).toEqual(['C1 FR-020 1 brace', ...OTHER]);
    shop.does('tom', { type: 'resume-operation', operation: 'FR-010' });
    shop.finish('tom', 'FR-010');
    shop.begin('tom', 'FR-010');
    expect(open(shop)).toEqual([...ALL, ...OTHER]);
  });

  test('the list that is solved asks for what is left of it', () => {
    const shop = opened();
    shop.does('tom', saw(bar('new', '6 m', of('rail', '2400 mm', 2))));
    const wanted = stillToSaw(carCuts(shop.plan(), shop.car()).wanted, shop.world.shop.sawn);
    const [list] = cutLists([shop.plan()], wanted, remnantsOf(shop.world.shop.remnants)).lists;
    expect(list?.problem?.pieces.map(({ key, count }) => [key, count])).toEqual([['A C1', 2]]);
  });
});

describe('what is refused, and by what', () => {
  test('two people tap the same bar: the second is told that it is sawn already', () => {
    const shop = opened();
    shop.does('leo', { type: 'count-remnants', item: 'T60', lengths: ['1900 mm'] });
    const both = saw(bar('rest', '1900 mm', of('brace', '900 mm', 2, 'C2')));
    shop.does('tom', both);
    expect(shop.refused('tess', both)).toMatchObject([
      { code: 'rest-not-there', details: { length: '1900 mm' } },
      { code: 'cut-not-wanted', details: { car: 'C2', piece: 'brace', left: 0, count: 2 } },
    ]);
  });

  test('of a list with one bar that is sawn already nothing is kept', () => {
    const shop = opened();
    const rails = bar('new', '6 m', of('rail', '2400 mm', 2));
    shop.does('tom', saw(rails));
    expect(shop.codes('tess', saw(bar('rest', '915 mm', of('brace', '900 mm', 1)), rails))).toEqual([
      'cut-not-wanted',
    ]);
    expect(rack(shop)).toEqual(['1240', '1174', '915']);
  });

  test.each([
    [saw(bar('rest', '1000 mm', of('brace', '900 mm', 1))), ['rest-not-there']],
    [saw(bar('rest', '1240 mm', of('brace', '900 mm', 2))), ['bar-too-short']],
    [saw(bar('new', '6 m', of('rail', '2400 mm', 2), of('brace', '900 mm', 2))), ['bar-too-short']],
    [saw(bar('new', '6 m', of('rail', '2400 mm', 3))), ['bar-too-short', 'cut-not-wanted']],
    [saw(bar('new', '6 m', of('rail', '2401 mm', 1))), ['cut-not-wanted']],
    [saw(bar('new', 'long', of('rail', '2400 mm', 1))), ['value-unreadable']],
    [saw({ ...bar('new', '6 m', of('rail', '2400 mm', 1)), left: '7 m' }), ['value-unreadable']],
    [saw(bar('new', '6 m', of('rail', '2400 mm', 1, 'C9'))), ['unknown-thing']],
    [{ ...saw(bar('new', '6 m', of('rail', '2400 mm', 1))), item: 'T9' }, ['unknown-thing']],
    [{ type: 'recut-pieces', item: 'T60', pieces: [of('rail', '2400 mm', 1)] }, ['not-sawn']],
  ] as const)('%j: %j', (told, codes) => {
    expect(opened().codes('tom', told)).toEqual(codes);
  });

  test('a piece that was spoiled is wanted again; one that is built in is not for the saw to want', () => {
    const shop = opened();
    shop.does('tom', saw(bar('new', '6 m', of('rail', '2400 mm', 2))));
    const again = { type: 'recut-pieces', item: 'T60', pieces: [of('rail', '2400 mm', 1)] } as const;
    shop.does('tom', again);
    expect(open(shop)[0]).toBe('C1 FR-010 1 rail');
    expect(rack(shop)).toEqual(['1240', '1174', '915']);
    shop.does('tom', saw(bar('new', '6 m', of('rail', '2400 mm', 1))));
    shop.perform('tom', 'FR-010');
    expect(shop.codes('tom', again)).toEqual(['not-sawn']);
  });
});
