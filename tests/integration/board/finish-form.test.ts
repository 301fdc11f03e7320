/** The form that finishes work: which lot a traced consumable came from, in the sentence over the PIN and in what is claimed. */
import { expect, test } from 'vitest';
import { operationForms } from '@/components/act/forms/operations';
import { jointForms } from '@/components/act/forms/joints';
import type { FormSpec, Values } from '@/components/act/form';
import { catalogueOf } from '@/lib/domain/shop/item';
import { shelfOf } from '@/lib/domain/shop/shelf';
import type { Desk } from '@/lib/wire/views/desk';
import { viewOf } from '@/tests/support/car-view';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    fluid: { name: 'brake fluid', unit: 'l', trace: 'lot' },
    tie: { name: 'tie wrap' },
    nut: { name: 'lock nut', reuse: 'once fitted', trace: 'lot' },
  },
  stages: { ST: { name: 'Steering' } },
  operations: {
    'ST-130': {
      name: 'Fill and bleed',
      stage: 'ST',
      body: ['snug J-1'],
      consumables: { fluid: '0.5 l', tie: 2 },
    },
  },
  joints: {
    'J-1': {
      name: 'Bleed screw',
      fasteners: 2,
      method: 'click',
      torque: '8 ± 1 N·m',
      source: 'invented',
      hardware: { nut: 2 },
    },
  },
});

const opened = (
  ...lots: readonly (readonly [item: string, lot: string, quantity: number, expires: string])[]
): Shop => {
  const shop = shopWith(DOCUMENT);
  for (const [item, lot, quantity, expires] of lots)
    shop.does('leo', { type: 'receive-lot', lot, item, quantity, expires });
  shop.does('leo', { type: 'put-away', places: [{ item: 'fluid', bin: '12a' }] });
  shop.begin('tom', 'ST-130');
  return shop;
};
const deskOf = (shop: Shop): Desk => {
  const { world } = shop;
  const shelf = shelfOf(world.shop, world.stock, catalogueOf([DOCUMENT]), shop.facts().day);
  return viewOf(shop, 'tom', { bins: world.shop.bins, shelf }).desk;
};
const form = (shop: Shop, values: Values = {}): FormSpec =>
  operationForms['finish-operation'](
    { type: 'finish-operation', kind: 'operation', key: 'ST-130', why: 0 },
    deskOf(shop),
    values,
  );
const optionsIn = ({ fields }: FormSpec): readonly (readonly [string, boolean])[] =>
  fields.flatMap((field) =>
    field.kind === 'choice'
      ? field.options.map(({ value, barred }) => [value, barred !== undefined] as const)
      : [],
  );

test('the lot that goes off first is proposed with its bin; another is a tap away; a bad one says why not', () => {
  const shop = opened(
    ['fluid', 'F-1', 5, '2026-09-01'],
    ['fluid', 'F-2', 5, '2026-06-01'],
    ['fluid', 'F-3', 5, '2026-05-01'],
  );
  shop.does('leo', { type: 'quarantine-lot', lot: 'F-3', reason: 'seal was broken' });
  const asked = form(shop);
  expect(asked.says).toContain('Used up: 0.5 l brake fluid, lot F-2.');
  expect(asked.claim()).toMatchObject({ type: 'finish-operation', lots: [{ item: 'fluid', lot: 'F-2' }] });
  expect(optionsIn(asked)).toEqual([
    ['proposed', false],
    ['lot F-1', false],
    ['lot F-3', true],
    ['unsaid', false],
  ]);
  const other = form(shop, { 'lot:fluid': 'lot F-1' });
  expect(other.says).toContain('lot F-1');
  expect(other.claim()).toMatchObject({ lots: [{ item: 'fluid', lot: 'F-1' }] });
  const unsaid = form(shop, { 'lot:fluid': 'unsaid' });
  expect(unsaid.says).toContain('lot not said');
  expect(unsaid.claim()).not.toHaveProperty('lots');
});

test('from two where the first has too little; with none on the shelf nothing is asked and the sentence says so', () => {
  const shop = opened(['fluid', 'F-1', 0.2, '2026-04-01'], ['fluid', 'F-2', 5, '2026-06-01']);
  expect(form(shop).says).toContain('Used up: 0.5 l brake fluid, 0.2 of lot F-1 and 0.3 of lot F-2.');
  expect(form(shop).claim()).toMatchObject({
    lots: [
      { lot: 'F-1', quantity: '0.2' },
      { lot: 'F-2', quantity: '0.3' },
    ],
  });
  const bare = form(opened());
  expect([bare.fields, bare.says.includes('lot not said')]).toEqual([[], true]);
});

test('snug on a car’s page names the lot by the same rule', () => {
  const shop = opened(['nut', 'N-1', 9, '2026-09-01'], ['nut', 'N-2', 9, '2026-06-01']);
  const snug = (values: Values = {}): FormSpec =>
    jointForms['snug-joint']({ type: 'snug-joint', kind: 'joint', key: 'J-1', why: 0 }, deskOf(shop), values);
  expect(snug().says).toContain('In it: lock nut, lot N-2.');
  expect(snug().claim()).toMatchObject({ hardware: [{ item: 'nut', lot: 'N-2', fasteners: [1, 2] }] });
  expect(snug({ 'hardware:nut': 'lot N-1' }).claim()).toMatchObject({
    hardware: [{ item: 'nut', lot: 'N-1' }],
  });
  expect(snug({ 'hardware:nut': 'plan' }).claim()).not.toHaveProperty('hardware');
});
