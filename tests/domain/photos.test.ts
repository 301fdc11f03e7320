import { describe, expect, test } from 'vitest';
import { decide } from '@/lib/domain/decide';
import type { Event } from '@/lib/domain/events';
import { ARM, plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const MINE = 'a'.repeat(64);
const SECOND = 'b'.repeat(64);
const OTHERS = 'c'.repeat(64);
const NOWHERE = 'd'.repeat(64);
const PHOTOS = {
  [MINE]: { car: 'C1', copy: '1'.repeat(64) },
  [SECOND]: { car: 'C1', copy: '2'.repeat(64) },
  [OTHERS]: { car: 'C2', copy: '3'.repeat(64) },
};

const document = plan({
  stages: { S1: { name: 'Frame' }, S2: { name: 'Axles' } },
  operations: { 'FR-060': { name: 'Stamp the number', stage: 'S1', body: ['check K-1', 'photo stamp'] } },
  checks: { 'K-1': { name: 'Gap', kind: 'measured', values: { gap: '1 to 2 mm' } } },
});

/** What came of a command where the shop keeps these photographs; null = its store was not asked. */
const judged = (shop: Shop, told: Told, photos: typeof PHOTOS | null = PHOTOS) => {
  const claim = { car: 'C1', ...told } as Parameters<typeof decide>[2]['claim'];
  const command = { id: 'p-1', doneAt: shop.facts('tom').now, claim };
  return decide({ ...shop.facts('tom'), photos }, shop.world, command);
};

const added = (events: readonly Event[]) =>
  events.flatMap((event) => (event.type === 'photo-added' ? [event] : []));

const running = (): Shop => {
  const shop = shopWith(document);
  shop.begin('tom', 'FR-060');
  return shop;
};

describe('a photograph stands with what was claimed when it was taken', () => {
  test.each<readonly [string, Told, of: string, slot: string]>([
    [
      'a finding',
      { type: 'report-finding', about: { kind: 'place', key: 'floor' }, text: 'dent', photos: [MINE] },
      'F-1',
      'as found',
    ],
    [
      'a failed check',
      { type: 'fail-check', check: 'K-1', reason: 'rub', photos: [MINE] },
      'K-1',
      'as it failed',
    ],
    [
      'a passed check',
      { type: 'pass-check', check: 'K-1', values: { gap: '1.5' }, photos: [MINE] },
      'K-1',
      'as it passed',
    ],
    [
      'a pass that fails by its value',
      { type: 'pass-check', check: 'K-1', values: { gap: '3' }, photos: [MINE] },
      'K-1',
      'as it failed',
    ],
    [
      'work that is left',
      { type: 'pause-operation', operation: 'FR-060', leftAs: 'one side', photos: [MINE] },
      'FR-060',
      'as it was left',
    ],
    ['a remark', { type: 'add-note', of: 'K-1', text: 'tight', photos: [MINE] }, 'K-1', 'with a remark'],
    [
      'one that the plan asks for',
      { type: 'add-photo', of: 'FR-060', slot: 'stamp', hash: MINE },
      'FR-060',
      'stamp',
    ],
  ])('%s', (_name, told, of, slot) => {
    const verdict = judged(running(), told);
    if (!verdict.ok) throw new Error(JSON.stringify(verdict.error));
    // The copy goes on record too: whoever swapped it later would be found out.
    expect(added(verdict.value)).toMatchObject([{ of, slot, hash: MINE, copy: PHOTOS[MINE]?.copy }]);
  });

  test('finished work, and two of them under one command', () => {
    const shop = running();
    shop.does('tess', { type: 'add-photo', of: 'FR-060', slot: 'stamp', hash: MINE });
    shop.does('tom', { type: 'pass-check', check: 'K-1', values: { gap: '1.5' } });
    shop.does('tom', { type: 'finish-operation', operation: 'FR-060', photos: [MINE, SECOND, MINE] });
    const rows = Object.entries(shop.car().photos).filter(([, { slot }]) => slot === 'as finished');
    expect(rows.map(([, { hash }]) => hash)).toEqual([MINE, SECOND]);
    expect(rows[1]?.[0]).toBe(`${rows[0]?.[0] ?? ''}/2`);
  });
});

describe('a joint is photographed as it is signed', () => {
  const JOINTED = plan({
    stages: { S1: { name: 'Axles' }, S2: { name: 'Wheels' } },
    operations: { 'AX-010': { name: 'Arms on', stage: 'S1', body: ['final J-1'] } },
    joints: {
      'J-1': ARM,
    },
  });
  const shown = (shop: Shop) => Object.values(shop.car().photos).map(({ of, slot }) => `${of} ${slot}`);

  test('at each level, when it is tried again, and what a second person does not agree with at its finding', () => {
    const shop = shopWith(JOINTED);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-1', photos: [MINE] });
    shop.does('tom', { ...shop.tightening('J-1'), photos: [MINE, SECOND] } as Told);
    shop.does('vera', { ...shop.verifying('J-1'), photos: [MINE] } as Told);
    shop.does('vera', { type: 'reject-joint', joint: 'J-1', reason: 'no stripe', photos: [SECOND] });
    shop.does('tess', { type: 'report-disturbed', joint: 'J-1', cause: 'stripe-broken', photos: [MINE] });
    expect(shown(shop)).toEqual([
      'J-1 as run up',
      'J-1 as torqued',
      'J-1 as torqued',
      'J-1 as verified',
      'F-1 as rejected',
      'F-2 as the stripe was',
    ]);
  });

  test('a later cycle is told, so that nobody takes an old picture for the joint as it is', () => {
    const shop = shopWith(JOINTED);
    shop.begin('tom', 'AX-010');
    shop.tighten('tom', 'J-1');
    shop.does('tom', { type: 'open-joint', joint: 'J-1' });
    shop.does('tom', { type: 'snug-joint', joint: 'J-1', photos: [MINE] });
    expect(shown(shop)).toEqual(['J-1 as run up, cycle 2']);
  });

  test('and without one the event is what it was before there were any', () => {
    const shop = shopWith(JOINTED);
    shop.begin('tom', 'AX-010');
    const bare = judged(shop, shop.tightening('J-1'));
    const empty = judged(shop, { ...shop.tightening('J-1'), photos: [] } as Told);
    const with1 = judged(shop, { ...shop.tightening('J-1'), photos: [MINE] } as Told);
    if (!bare.ok || !empty.ok || !with1.ok) throw new Error('refused');
    expect(JSON.stringify(empty.value)).toBe(JSON.stringify(bare.value));
    expect(JSON.stringify(with1.value.slice(0, -1))).toBe(JSON.stringify(bare.value));
    expect(added(with1.value)).toMatchObject([{ of: 'J-1', hash: MINE, copy: PHOTOS[MINE]?.copy }]);
  });
});

describe('one that the shop does not hold of this car names nothing', () => {
  const finding = (photos: readonly string[]): Told => ({
    type: 'report-finding',
    about: { kind: 'place', key: 'floor' },
    text: 'dent',
    photos,
  });

  test.each([
    ['nowhere', NOWHERE],
    ['of another car', OTHERS],
  ])('%s', (_name, hash) => {
    for (const told of [
      finding([MINE, hash]),
      { type: 'add-photo', of: 'FR-060', slot: 'stamp', hash } as const,
    ]) {
      const verdict = judged(running(), told);
      expect(verdict).toMatchObject({
        ok: false,
        error: [{ code: 'unknown-thing', details: { what: 'photograph', key: hash } }],
      });
    }
  });

  test('and says what clears it', () => {
    const shop = running();
    const verdict = judged(shop, finding([NOWHERE]));
    expect(shop.sentences(verdict.ok ? [] : verdict.error)).toEqual([
      'The shop holds no photograph “dddddddddddd” of this car. Send it again, or give the rest without it.',
    ]);
  });

  test('every other reason is told beside it', () => {
    const told: Told = { type: 'finish-operation', operation: 'FR-060', photos: [NOWHERE] };
    const verdict = judged(running(), told);
    expect(verdict.ok ? [] : verdict.error.map(({ code }) => code)).toEqual([
      'check-not-clear',
      'photo-missing',
      'unknown-thing',
    ]);
  });

  test('where no store is asked, as in a day that is played from a file, any name is taken', () => {
    const verdict = judged(running(), finding([NOWHERE]), null);
    expect(verdict.ok && added(verdict.value)).toMatchObject([{ hash: NOWHERE }]);
  });
});
