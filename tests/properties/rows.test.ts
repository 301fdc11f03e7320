/** Invariant 6: `fromRows(toRows(car))` is the car, the rows' difference turns the old rows into the new, and the log gives the world. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Row, RowDelta } from '@/lib/domain/car/codec';
import type { Car } from '@/lib/domain/car/rows';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { Event } from '@/lib/domain/events';
import type { Game, Step } from '@/tests/support/game';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

const fail = (said: string, game: Game): never => {
  throw new Error(`invariant 6: ${said}\n${game.told()}`);
};

/** As a table holds it: by its keys, in no order, as JSON. */
type Table = ReadonlyMap<string, string>;
const nameOf = ({ table, key }: { readonly table: string; readonly key: string }): string =>
  `${table} ${key}`;
const tableOf = (rows: readonly Row[]): Map<string, string> =>
  new Map(rows.map((row) => [nameOf(row), JSON.stringify(row)]));
const rowsOf = (table: Table): readonly Row[] =>
  [...table.values()].reverse().map((text) => JSON.parse(text) as Row);

const applied = (table: Table, delta: RowDelta): Table => {
  const found = new Map(table);
  for (const row of delta.drop) found.delete(nameOf(row));
  for (const [name, text] of tableOf(delta.put)) found.set(name, text);
  return found;
};

const codecHolds = (rules: Rules, car: Car, game: Game): void => {
  const rows = rules.toRows(car);
  const stored = rows.map((row) => JSON.parse(JSON.stringify(row)) as Row).reverse();
  if (!isDeepStrictEqual(rules.fromRows(rows), car)) fail(`${car.id} is not what its rows give back`, game);
  if (!isDeepStrictEqual(rules.fromRows(stored), car))
    fail(`${car.id} is not what its stored rows give back`, game);
};

/** `stored` is what a store holds that was only ever told differences. */
const deltaHolds = (rules: Rules, stored: Map<string, Table>, { before, after, game }: Step): void => {
  for (const car of Object.values(after.cars)) {
    const old = before.cars[car.id] ?? null;
    if (old === car) continue;
    const table = applied(stored.get(car.id) ?? new Map(), rules.rowDelta(old, car));
    stored.set(car.id, table);
    if (!isDeepStrictEqual(rules.fromRows(rowsOf(table)), car))
      fail(`the rows of ${car.id} lag behind it`, game);
    if (old !== null && car.version <= old.version) fail(`the version of ${car.id} did not rise`, game);
  }
};

const logHolds = (rules: Rules, game: Game): void => {
  const stored = JSON.parse(JSON.stringify(game.log)) as readonly Event[];
  const again = stored.reduce((world, event) => rules.evolve(world, event), EMPTY_WORLD);
  if (!isDeepStrictEqual(again, game.world)) fail('the log gives another world', game);
};

const rowsAreTheCar = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, (history) => {
    const stored = new Map<string, Table>();
    const game = playHistory(rules, history, (step) => {
      deltaHolds(rules, stored, step);
    });
    for (const car of Object.values(game.world.cars)) codecHolds(rules, car, game);
    logHolds(rules, game);
  });

/** It counts what it has folded, so that the second time gives something else. */
const unrepeatable = (): Rules['evolve'] => {
  let folded = 0;
  return (world, event) => {
    folded += 1;
    const late =
      event.type === 'joint-doubted' ? { ...event, doubt: { ...event.doubt, at: String(folded) } } : event;
    return RULES.evolve(world, late);
  };
};

/** Changes a row in place, so that the difference can't see it. */
const inPlace: Rules['evolve'] = (world, event) => {
  const after = RULES.evolve(world, event);
  const row =
    event.type === 'signature-struck' ? world.cars[event.car]?.signatures[event.signature] : undefined;
  const struck =
    event.type === 'signature-struck' ? after.cars[event.car]?.signatures[event.signature] : undefined;
  if (row === undefined || struck === undefined || event.type !== 'signature-struck') return after;
  Object.assign(row, struck);
  const car = after.cars[event.car];
  if (car === undefined) return after;
  const signatures = { ...car.signatures, [event.signature]: row };
  return { ...after, cars: { ...after.cars, [car.id]: { ...car, signatures } } };
};

describe('invariant 6, rows and log', () => {
  test('rows, differences and the log give the same car', () => {
    fc.assert(rowsAreTheCar(RULES), runs(350));
  });

  test.each<[string, () => Partial<Rules>]>([
    ['drop a table', () => ({ toRows: (car) => RULES.toRows(car).filter(({ table }) => table !== 'gates') })],
    [
      'read a table short',
      () => ({ fromRows: (rows) => RULES.fromRows(rows.filter(({ table }) => table !== 'stopgaps')) }),
    ],
    [
      'forget rows that are gone',
      () => ({ rowDelta: (old, car) => ({ ...RULES.rowDelta(old, car), drop: [] }) }),
    ],
    [
      'put only new keys',
      () => ({
        rowDelta: (old, car) => {
          const { put, drop } = RULES.rowDelta(old, car);
          const known = new Set((old === null ? [] : RULES.toRows(old)).map(nameOf));
          return { put: put.filter((row) => row.table === 'car' || !known.has(nameOf(row))), drop };
        },
      }),
    ],
    ['fold otherwise the second time', () => ({ evolve: unrepeatable() })],
    ['change a row in place', () => ({ evolve: inPlace })],
  ])('rules that %s are seen', (_, fault) => {
    const found = fc.check(rowsAreTheCar({ ...RULES, ...fault() }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 6');
  });
});
