/**
 * A donor graded part by part, its parts at the machine shop and back, one robbed for another car. Shop days: donor
 * intake, outside work with its incoming check, robbing. Grades, places and days are invented.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { lastOuting } from '@/lib/domain/car/component-rows';
import { NO_DONOR_FACTS, donorWords } from '@/lib/domain/car/donor-identity';
import type { NeedLine } from '@/lib/domain/shop/need-line';
import { carNeed } from '@/lib/domain/shop/need';
import { catalogueOf } from '@/lib/domain/shop/item';
import { onHand } from '@/lib/domain/shop/stock';
import { toDecimalText } from '@/lib/domain/base/exact';
import { takesMore } from '@/lib/domain/shop/trip-rows';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const axle = plan({
  stages: { AX: { name: 'Axles' }, EN: { name: 'Engine' } },
  operations: {
    'AX-130': { name: 'Drums on', stage: 'AX', body: ['fit P-26'] },
    'EN-130': { name: 'Starter and alternator on', stage: 'EN', body: ['fit P-11', 'fit P-12'] },
    'EN-020': { name: 'Pump on', stage: 'EN', body: ['fit P-08'] },
  },
  parts: {
    'P-26': { name: 'rear drums', origin: 'donor', grade: 'refurbish', lookedAt: 'max size stamped' },
    'P-11': { name: 'starter motor', origin: 'donor', grade: 'refurbish' },
    'P-12': { name: 'alternator', origin: 'donor', grade: 'refurbish' },
    'P-08': { name: 'water pump', origin: 'donor', grade: 'replace' },
  },
});

let shop: Shop;
beforeEach(() => {
  shop = shopWith(axle);
  shop.startCar('C2', axle);
  shop.does('leo', { type: 'set-supplier', supplier: 'works', name: 'Works', orderDays: [1], lead: 5 });
});

const part = (key: string, car = 'C1') => shop.car(car).parts[key];
const component = (key: string, car = 'C1') => shop.car(car).components[key];
const bought = (): readonly NeedLine[] => {
  const { world } = shop;
  return carNeed(shop.plan('C1'), shop.car(), world.shop, catalogueOf([axle])).lines.filter(
    ({ what }) => what === 'part',
  );
};
const ends = (): readonly string[] => shop.assess().looseEnds.map(({ refusal }) => refusal.code);

describe('grading', () => {
  test('before anybody has looked, the need is what the plan expects', () => {
    expect(bought().map(({ item, cause }) => [item, cause.kind])).toEqual([['P-08', 'planned']]);
  });

  test('a list is one act: good ones are here, the others wait or are bought', () => {
    const events = shop.does('tom', {
      type: 'grade-parts',
      parts: [
        { part: 'P-12', grade: 'scrap', place: 'bin', note: 'case cracked' },
        { part: 'P-11', grade: 'reuse', place: '4A', serial: 'D-771' },
        { part: 'P-26', grade: 'refurbish', place: '2B' },
        { part: 'P-08', grade: 'reuse' },
      ],
    });
    expect(events.map(({ type }) => type)).toEqual(Array(4).fill('part-graded'));
    expect(['P-12', 'P-11', 'P-26', 'P-08'].map((key) => part(key)?.state ?? 'absent')).toEqual([
      'absent',
      'present',
      'absent',
      'present',
    ]);
    expect(component('P-11')).toMatchObject({ grade: 'reuse', place: '4A', serial: 'D-771', by: 'tom' });
    // The pump is good after all and is not bought; the alternator is, weeks before it is fitted.
    expect(bought().map(({ item, cause }) => [item, cause])).toEqual([
      ['P-12', { kind: 'graded', grade: 'scrap', usual: 'refurbish' }],
    ]);
    expect(ends()).toEqual([]);
  });

  test('one that the plan would buy new and that is worth refurbishing is not bought', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-08', grade: 'refurbish' }] });
    expect(part('P-08')?.state ?? 'absent').toBe('absent');
    expect(bought()).toEqual([]);
  });

  test('a mis-tap is mended, and what stands on the car is no longer graded', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'reuse' }] });
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'scrap' }] });
    expect(part('P-11')).toMatchObject({ state: 'absent', piece: 1 });
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'reuse', place: '4A' }] });
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-12', grade: 'reuse' }] });
    shop.perform('tom', 'EN-130');
    const codes = shop.codes('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'scrap' }] });
    expect(codes).toEqual(['part-already']);
    // Where the number stands may be said at any time; an empty text takes the place back.
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', serial: 'D-771', place: '' }] });
    expect(component('P-11')).toMatchObject({ grade: 'reuse', serial: 'D-771', place: null });
    expect(part('P-11')?.state).toBe('fitted');
  });

  test('what was received new is another piece than the one that was given up', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-12', grade: 'replace' }] });
    shop.does('tom', { type: 'receive-part', part: 'P-12' });
    expect(part('P-12')).toMatchObject({ state: 'present', piece: 2 });
    expect(component('P-12')).toMatchObject({ grade: 'replace', piece: 1 });
    expect(bought().map(({ item }) => item)).toEqual(['P-08']);
    expect(shop.codes('tom', { type: 'grade-parts', parts: [{ part: 'P-12', grade: 'reuse' }] })).toEqual([
      'part-already',
    ]);
  });

  test('what was condemned and is awaited is not graded: the next one is received', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-12', grade: 'refurbish' }] });
    shop.does('tom', { type: 'report-finding', about: { kind: 'part', key: 'P-12' }, text: 'cracked' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'cracked' });
    expect(shop.codes('tom', { type: 'grade-parts', parts: [{ part: 'P-12', grade: 'reuse' }] })).toEqual([
      'part-absent',
    ]);
  });

  test('one named twice, or unknown, refuses the whole list', () => {
    const twice = [
      { part: 'P-11', grade: 'reuse' },
      { part: 'P-11', grade: 'scrap' },
    ] as const;
    expect(shop.codes('tom', { type: 'grade-parts', parts: twice })).toEqual(['given-before']);
    expect(
      shop.codes('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'reuse' }, { part: 'P-99' }] }),
    ).toEqual(['unknown-thing']);
    expect(shop.car().components).toEqual({});
  });
});

describe('which vehicle it was', () => {
  test('is recorded by a lead, bit by bit, and corrected by whoever read the plate again', () => {
    expect(shop.codes('tom', { type: 'record-donor', year: '1967' })).toEqual(['not-allowed']);
    shop.does('leo', { type: 'record-donor', year: ' 1967', model: 'Dunmore 1800', number: 'DS-04471' });
    shop.does('ada', { type: 'record-donor', number: 'DS-04417', mileage: '71,400 miles', from: 'a barn' });
    shop.does('leo', { type: 'record-donor', from: '', came: '2026-02-20' });
    expect(shop.car().donor).toMatchObject({
      year: 1967,
      model: 'Dunmore 1800',
      number: 'DS-04417',
      mileage: '71,400 miles',
      from: null,
      came: '2026-02-20',
      by: 'leo',
    });
    expect(donorWords(shop.car().donor ?? NO_DONOR_FACTS)).toBe('1967 Dunmore 1800, number DS-04417');
    expect(shop.does('leo', { type: 'record-donor', year: '1967' })).toEqual([]);
  });

  test('a year and a day are ones; a number that looks wrong is kept as it was read', () => {
    expect(shop.codes('leo', { type: 'record-donor', year: '67', came: 'last week' })).toEqual([
      'value-unreadable',
      'value-unreadable',
    ]);
    shop.does('leo', { type: 'record-donor', year: '1994', number: 'ZZ9DM18SXKT004418' });
    expect(shop.car().donor?.number).toBe('ZZ9DM18SXKT004418');
  });

  test('a photograph shows the one part that is graded with it', () => {
    const photos = ['ab12'];
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'reuse' }], photos });
    // Nothing else is new: the picture is.
    const [added] = shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11' }], photos: ['cd34'] });
    expect(added).toMatchObject({ type: 'photo-added', of: 'P-11', slot: 'off the donor', hash: 'cd34' });
    expect(
      shop.codes('tom', { type: 'grade-parts', parts: [{ part: 'P-11' }, { part: 'P-12' }], photos }),
    ).toEqual(['unknown-thing']);
  });
});

describe('a look of its own', () => {
  /** The shafts carry the wheels: cleaned and measured before they count. */
  const shafts = plan({
    stages: { AX: { name: 'Axles' } },
    operations: { 'AX-120': { name: 'Shafts in', stage: 'AX', needs: ['part P-24'], body: ['fit P-24'] } },
    checks: { 'K-4': { name: 'no crack', kind: 'visual', about: 'P-24', due: 'AX' } },
    parts: { 'P-24': { name: 'half shafts', origin: 'donor', grade: 'reuse', lookOver: true } },
  });
  const look = { type: 'receive-part', part: 'P-24', looked: 'splines whole, no crack in the dye' } as const;
  beforeEach(() => {
    shop = shopWith(shafts);
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-24', grade: 'reuse', place: '6B' }] });
  });

  test('graded reuse it waits until somebody says what was looked at; no other one is bought', () => {
    expect(part('P-24')?.state ?? 'absent').toBe('absent');
    expect(shop.codes('tom', { type: 'start-operation', operation: 'AX-120' })).toEqual([
      'part-not-looked-over',
    ]);
    expect(shop.refused('tess', { type: 'receive-part', part: 'P-24' })).toMatchObject([
      { code: 'look-not-said', details: { part: 'P-24', isBack: false } },
    ]);
    shop.does('tess', look);
    expect(part('P-24')).toMatchObject({ state: 'present', piece: 1 });
    expect(component('P-24')).toMatchObject({
      grade: 'reuse',
      place: '6B',
      outings: [],
      looked: { text: look.looked, by: 'tess' },
    });
    shop.perform('tom', 'AX-120');
    expect(part('P-24')?.state).toBe('fitted');
  });

  test('its check may be made while it waits', () => {
    shop.does('tess', look);
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-24', grade: 'refurbish' }] });
    expect(shop.codes('tess', { type: 'pass-check', check: 'K-4' })).toEqual(['part-absent']);
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-24', grade: 'reuse' }] });
    shop.does('tess', { type: 'pass-check', check: 'K-4' });
  });

  test('graded otherwise and back again it waits for another look; one off the shelf waits for none', () => {
    shop.does('tess', look);
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-24', grade: 'scrap' }] });
    expect(component('P-24')?.looked).toBeUndefined();
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-24', grade: 'reuse' }] });
    expect(shop.codes('tess', { type: 'receive-part', part: 'P-24' })).toEqual(['look-not-said']);
    shop.does('leo', { type: 'receive-lot', lot: 'L-9', item: 'P-24', quantity: 1 });
    shop.does('tom', { type: 'receive-part', part: 'P-24', item: 'P-24', lot: 'L-9' });
    expect(part('P-24')).toMatchObject({ state: 'present', piece: 2 });
  });

  test('sent out all the same, the look after it came back is that of the trip', () => {
    shop.does('leo', { type: 'set-supplier', supplier: 'works', name: 'Works', orderDays: [1], lead: 5 });
    shop.does('leo', {
      type: 'open-trip',
      trip: '1',
      supplier: 'works',
      goes: '2026-03-02',
      due: '2026-03-09',
    });
    const sent = { type: 'send-parts', trip: '1', parts: [{ part: 'P-24', work: 'crack test' }] } as const;
    shop.does('tom', sent);
    shop.does('tess', { type: 'return-parts', trip: '1', parts: [{ part: 'P-24', how: 'not-done' }] });
    expect(shop.codes('tess', { type: 'receive-part', part: 'P-24' })).toEqual(['look-not-said']);
    shop.does('tess', { ...look, looked: 'no crack to be seen' });
    expect(component('P-24')?.looked?.text).toBe('no crack to be seen');
    expect(lastOuting(component('P-24'))?.looked).toBeNull();
    shop.does('tom', sent);
    shop.does('tess', { type: 'return-parts', trip: '1', parts: [{ part: 'P-24', how: 'done' }] });
    shop.does('tess', look);
    expect(component('P-24')?.looked?.text).toBe('no crack to be seen');
    expect(lastOuting(component('P-24'))?.looked?.text).toBe(look.looked);
  });
});

describe('outside work', () => {
  beforeEach(() => {
    shop.does('leo', {
      type: 'open-trip',
      trip: '1',
      supplier: 'works',
      goes: '2026-03-02',
      due: '2026-03-09',
    });
  });
  const drums = { type: 'send-parts', trip: '1', parts: [{ part: 'P-26', work: 'skim, in pairs' }] } as const;

  test('a trip takes parts of several cars; out, they are loose ends and can’t be fitted', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-26', grade: 'refurbish' }] });
    shop.does('tom', drums);
    shop.does('tom', { ...drums, car: 'C2' });
    expect(part('P-26', 'C2')?.state).toBe('out');
    expect(ends()).toEqual(['part-away']);
    shop.does('tom', { type: 'start-operation', operation: 'AX-130' });
    expect(shop.codes('tom', { type: 'fit-part', part: 'P-26' })).toEqual(['part-away']);
    expect(shop.codes('tom', { type: 'receive-part', part: 'P-26' })).toEqual(['part-away']);
  });

  test('back, it counts as here only after a look that says what was looked at', () => {
    shop.does('tom', drums);
    shop.does('tess', { type: 'return-parts', trip: '1', parts: [{ part: 'P-26', how: 'done' }] });
    expect(part('P-26')?.state).toBe('back');
    expect(shop.refused('tess', { type: 'receive-part', part: 'P-26', looked: ' ' })).toMatchObject([
      { code: 'look-not-said', details: { part: 'P-26', isBack: true } },
    ]);
    shop.does('tess', { type: 'receive-part', part: 'P-26', looked: '229.1 and 229.1, limit 230' });
    expect(part('P-26')).toMatchObject({ state: 'present', piece: 1 });
    expect(lastOuting(component('P-26'))).toMatchObject({
      trip: '1',
      back: { how: 'done', by: 'tess' },
      looked: { text: '229.1 and 229.1, limit 230', by: 'tess' },
    });
    expect(ends()).toEqual([]);
  });

  test('off a finished car its work is due again; not done, it waits for the next trip', () => {
    shop.does('tom', { type: 'receive-part', part: 'P-26' });
    shop.perform('tom', 'AX-130');
    const events = shop.does('tom', drums);
    expect(events.map(({ type }) => type)).toEqual(['part-sent', 'operation-due-again']);
    shop.does('tess', { type: 'return-parts', trip: '1', parts: [{ part: 'P-26', how: 'not-done' }] });
    expect(part('P-26')?.state).toBe('absent');
    expect(ends()).not.toContain('part-away');
    expect(bought().map(({ item }) => item)).toEqual(['P-08']);
  });

  test('damaged, a finding opens for each, with numbers of their own', () => {
    shop.does('tom', { ...drums, parts: [...drums.parts, { part: 'P-11', work: 'brushes' }] });
    shop.does('tess', {
      type: 'return-parts',
      trip: '1',
      parts: [
        { part: 'P-26', how: 'damaged', note: 'chuck marks' },
        { part: 'P-11', how: 'damaged' },
      ],
    });
    expect(Object.entries(shop.car().findings).map(([id, { about, text }]) => [id, about.key, text])).toEqual(
      [
        ['F-1', 'P-26', 'came back damaged from trip 1: chuck marks'],
        ['F-2', 'P-11', 'came back damaged from trip 1'],
      ],
    );
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'marks' });
    expect(bought().map(({ item, cause }) => [item, cause])).toContainEqual([
      'P-26',
      { kind: 'condemned', finding: 'F-1' },
    ]);
  });

  test('what is not out on that trip can’t come back from it', () => {
    shop.does('leo', {
      type: 'open-trip',
      trip: '2',
      supplier: 'works',
      goes: '2026-03-09',
      due: '2026-03-16',
    });
    shop.does('tom', { ...drums, trip: '2' });
    const back = { type: 'return-parts', parts: [{ part: 'P-26', how: 'done' }] } as const;
    expect(shop.codes('tess', { ...back, trip: '1' })).toEqual(['part-not-away']);
    shop.does('tess', { ...back, trip: '2' });
    expect(shop.codes('tess', { ...back, trip: '2' })).toEqual(['part-not-away']);
  });

  test('a trip has a supplier, a number of its own and no return before it goes; bills add up beside it', () => {
    const trip = {
      type: 'open-trip',
      trip: '2',
      supplier: 'works',
      goes: '2026-03-09',
      due: '2026-03-16',
    } as const;
    expect(shop.codes('leo', { ...trip, supplier: 'nobody' })).toEqual(['unknown-thing']);
    expect(shop.codes('leo', { ...trip, trip: '1' })).toEqual(['already-there']);
    expect(shop.codes('leo', { ...trip, due: '2026-03-08' })).toEqual(['back-before-gone']);
    expect(shop.codes('leo', { type: 'promise-trip', trip: '1', due: '2026-03-01' })).toEqual([
      'back-before-gone',
    ]);
    shop.does('leo', { type: 'promise-trip', trip: '1', due: '2026-03-11' });
    const lines = [{ car: 'C1', part: 'P-26', money: 4500 }];
    shop.does('leo', { type: 'bill-trip', trip: '1', lines, freight: 900, note: '7-114' });
    expect(shop.codes('leo', { type: 'bill-trip', trip: '1', lines: [...lines, ...lines] })).toEqual([
      'given-before',
    ]);
    expect(['2026-03-11', '2026-03-12'].map((day) => takesMore({ due: '2026-03-11' }, day))).toEqual([
      true,
      false,
    ]);
    expect(shop.world.shop.trips['1']).toMatchObject({ due: '2026-03-11', bills: [{ lines, freight: 900 }] });
  });
});

describe('a part for another car', () => {
  const take = { type: 'take-part', car: 'C2', part: 'P-11', reason: 'C1 leaves first' } as const;

  test('is received off the car that gave it up for this one, once', () => {
    const receive = { type: 'receive-part', part: 'P-11', from: 'C2', serial: 'D-802' } as const;
    expect(shop.refused('tess', receive)).toMatchObject([
      { code: 'part-not-given', details: { part: 'P-11', from: 'C2', car: 'C1' } },
    ]);
    shop.does('tess', take);
    expect(shop.codes('tess', receive)).toEqual(['part-not-given']);
    shop.does('tess', { ...take, takenFor: 'C1' });
    shop.later('5 min').does('tess', receive);
    expect(component('P-11')).toMatchObject({ from: 'C2', serial: 'D-802', grade: 'reuse' });
    // Both cars show it: one has it, the other is owed one.
    expect(part('P-11', 'C2')).toMatchObject({ state: 'taken', takenFor: 'C1' });
    shop.does('tom', { type: 'report-finding', about: { kind: 'part', key: 'P-11' }, text: 'burnt out' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'burnt' });
    expect(shop.later('5 min').codes('tess', receive)).toEqual(['part-not-given']);
  });

  test('is another piece than the donor’s own, where that was graded', () => {
    shop.does('tom', { type: 'grade-parts', parts: [{ part: 'P-11', grade: 'refurbish' }] });
    shop.does('tess', { ...take, takenFor: 'C1' });
    shop.later('5 min').does('tess', { type: 'receive-part', part: 'P-11', from: 'C2' });
    expect(part('P-11')).toMatchObject({ state: 'present', piece: 2 });
  });
});

describe('a bought part off the shelf', () => {
  beforeEach(() => {
    shop.does('leo', { type: 'receive-lot', lot: 'L-9', item: 'P-08', quantity: 2 });
  });

  test('leaves its lot by the same event', () => {
    const [event] = shop.does('tom', { type: 'receive-part', part: 'P-08', item: 'P-08', lot: 'L-9' });
    expect(event).toMatchObject({ drawn: [{ item: 'P-08', lot: 'L-9', quantity: '1' }] });
    const row = shop.world.stock['P-08|L-9'];
    expect(row === undefined ? null : toDecimalText(onHand(row), 3)).toBe('1');
  });

  test('is the right item, of a lot that may be used', () => {
    shop.does('leo', { type: 'receive-lot', lot: 'L-8', item: 'GASKET', quantity: 2 });
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-9', reason: 'seal weeps' });
    expect(shop.codes('tom', { type: 'receive-part', part: 'P-08', item: 'GASKET', lot: 'L-8' })).toEqual([
      'item-not-this-part',
    ]);
    expect(shop.codes('tom', { type: 'receive-part', part: 'P-08', item: 'P-08', lot: 'L-9' })).toEqual([
      'lot-quarantined',
    ]);
  });
});
