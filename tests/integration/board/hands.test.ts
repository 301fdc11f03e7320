/** Who is on it already is not offered to join; stepping out, pausing and giving work to people as their forms say it. */
import { beforeEach, describe, expect, test } from 'vitest';
import { formFor } from '@/components/act/form-table';
import type { FormSpec, Values } from '@/components/act/form';
import type { CarView } from '@/lib/wire/views/car';
import type { CarClaimType } from '@/lib/wire/views/desk';
import { viewOf } from '@/tests/support/car-view';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

let shop: Shop;
beforeEach(() => {
  shop = shopWith(
    plan({
      stages: { AX: { name: 'Axles' } },
      operations: { 'AX-010': { name: 'Axle on', stage: 'AX', crew: 2 } },
    }),
  );
  shop.does('tom', { type: 'start-operation', operation: 'AX-010' });
});

const viewFor = (me: string): CarView => viewOf(shop, me);
const actsFor = (me: string) =>
  viewFor(me).ends.flatMap(({ rows }) => rows.flatMap(({ acts }) => acts.map(({ type }) => type)));
const formOf = (me: string, type: CarClaimType, values: Values = {}): FormSpec | null => {
  const view = viewFor(me);
  const act = view.ends
    .flatMap(({ rows }) => rows.flatMap(({ acts }) => acts))
    .find((each) => each.type === type);
  return act === undefined ? null : formFor(act, view.desk, values);
};

describe('given work that takes two', () => {
  test('then who is on it is offered that another one joins, and who is not, to join', () => {
    expect(formOf('tom', 'join-operation')?.title).toBe('Another joins');
    expect(formOf('tess', 'join-operation')?.title).toBe('Join');
  });

  test('then with two on it one may step out, and a pause says that it stops for both', () => {
    expect(actsFor('tom')).not.toContain('leave-operation');
    expect(formOf('tom', 'pause-operation')?.brings).toEqual([]);
    shop.does('tess', { type: 'join-operation', operation: 'AX-010' });
    expect(formOf('tess', 'leave-operation', { leftAs: 'two bolts in' })?.claim()).toEqual({
      type: 'leave-operation',
      car: 'C1',
      operation: 'AX-010',
      leftAs: 'two bolts in',
    });
    expect(formOf('tess', 'pause-operation')?.brings).toEqual(['It stops for everybody who is on it.']);
  });
});

test('a list given from a page tells who came and who went since that page, and nothing of the others', () => {
  shop.does('leo', { type: 'assign', job: 'stage:AX', add: ['tom', 'vera'] });
  const { desk } = viewFor('leo');
  const act = desk.always.find(({ type }) => type === 'assign');
  if (act === undefined) throw new Error('no list');
  shop.does('ada', { type: 'assign', job: 'stage:AX', add: ['ada'] });
  const claim = formFor(act, desk, { people: ['vera', 'tess'] })?.claim();
  expect(claim).toEqual({ type: 'assign', car: 'C1', job: 'stage:AX', add: ['tess'], remove: ['tom'] });
  if (claim?.type !== 'assign') throw new Error('no claim');
  shop.does('leo', claim);
  expect(shop.car().assignments['stage:AX']?.people).toEqual(['vera', 'ada', 'tess']);
});
