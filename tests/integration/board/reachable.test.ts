/** At the place where a line leads stands the act that clears it, for somebody who may give it (`places.test.ts`: where). */
import { describe, expect, test } from 'vitest';
import { hasForm } from '@/components/act/form-table';
import type { ClaimType } from '@/lib/domain/commands';
import { planOf } from '@/lib/domain/facts';
import { LOOSE_END_KINDS } from '@/lib/domain/loose-ends';
import type { LooseEndKind } from '@/lib/domain/loose-ends';
import { factsAt } from '@/lib/domain/play';
import { carViewOf } from '@/lib/server/queries/car/view';
import { NO_STORES } from '@/lib/server/queries/sign-off/lot-choices';
import type { CarView, RowView } from '@/lib/wire/views/car';
import type { ActRef } from '@/lib/wire/views/desk';
import { GATE_ANCHOR } from '@/lib/wire/views/said-line';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import { viewOf } from '@/tests/support/car-view';
import { demoOn } from '@/tests/support/demo';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

/** The acts that end such a promise; a joint's are given on its sheet. */
const CLEARS: Readonly<Record<LooseEndKind, readonly ClaimType[] | 'sheet'>> = {
  hold: ['release-hold'],
  finding: ['decide-finding', 'close-finding'],
  change: ['decide-change'],
  doubt: 'sheet',
  joint: 'sheet',
  check: ['pass-check', 'begin-check'],
  operation: ['finish-operation', 'resume-operation', 'start-operation'],
  stopgap: ['remove-stopgap'],
  part: ['receive-part'],
};

const loose = plan({
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: {
    'AX-010': {
      name: 'Axle on',
      stage: 'AX',
      wait: '2 h',
      body: ['fit P-1', 'snug J-1', 'check K-1', 'photo axle'],
    },
    'AX-020': { name: 'Bolts', stage: 'AX', body: ['final J-2', 'check K-2'] },
    'WH-010': { name: 'Down', stage: 'WH', body: ['final J-1'] },
  },
  joints: {
    'J-1': {
      name: 'Eye',
      fasteners: 1,
      method: 'click',
      torque: '60 ± 4 N·m',
      source: 'invented',
      due: 'WH',
    },
    'J-2': {
      name: 'U-bolts',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
    },
  },
  checks: {
    'K-1': { name: 'Gap', kind: 'functional', values: { play: 'none' }, source: 'invented' },
    'K-2': { name: 'Square', kind: 'functional', values: { square: 'yes it is' }, source: 'invented' },
  },
  parts: { 'P-1': { name: 'Axle' } },
});

/** One of each kind. */
const withAllEnds = (): Shop => {
  const shop = shopWith(loose);
  shop.begin('tom', 'AX-010');
  shop.does('tom', { type: 'receive-part', part: 'P-1' });
  shop.does('tom', { type: 'fit-part', part: 'P-1' });
  shop.does('tom', { type: 'snug-joint', joint: 'J-1' });
  shop.begin('tess', 'AX-020');
  shop.does('tess', { type: 'fail-check', check: 'K-2', reason: 'out of square' });
  shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'turn it' });
  shop.tighten('tess', 'J-2');
  shop.does('vera', { type: 'report-disturbed', joint: 'J-2', cause: 'moved' });
  shop.does('tom', { type: 'place-stopgap', what: 'a clamp' });
  shop.does('tom', { type: 'ask-change', wait: 'AX-010', reason: 'it is dry' });
  shop.does('tom', { type: 'report-finding', about: { kind: 'place', key: 'rail' }, text: 'scratch' });
  shop.does('tom', { type: 'take-part', part: 'P-1', reason: 'for another car' });
  shop.does('leo', { type: 'place-hold', scope: 'gate', reason: 'papers' });
  return shop;
};

/** Somebody here is not told why not. */
const somebodyMay = ({ desk }: CarView, { why }: ActRef): boolean =>
  desk.people.some(({ id }) => desk.whys[why]?.[id] === undefined);

const pathOf = (href: string): readonly [page: string, anchor: string | undefined] => {
  const [page = '', anchor] = href.split('#');
  return [page, anchor];
};

/** Does the address lead to a place that is there? */
const leadsTo = (view: CarView, { href }: RefusalLine): boolean => {
  if (href === null) return true;
  const [page, anchor] = pathOf(href);
  if (page !== `/cars/${encodeURIComponent(view.id)}`) return true;
  return anchor === GATE_ANCHOR || (anchor !== undefined && view.places[anchor] !== undefined);
};

const linesIn = (rows: readonly RowView[]): readonly RefusalLine[] => rows.flatMap(({ waits }) => waits);
const flat = (lines: readonly RefusalLine[]): readonly RefusalLine[] =>
  lines.flatMap((line) => [line, ...flat(line.under ?? [])]);
const allRows = (view: CarView): readonly RowView[] => [
  ...view.ends.flatMap(({ rows }) => rows),
  ...view.work.flatMap(({ rows }) => rows),
  ...view.conditions,
  ...view.parts,
];

describe('given a car with a loose end of each kind', () => {
  const view = viewOf(withAllEnds());

  test.each(LOOSE_END_KINDS)('%s has its row, and there the act that clears it', (kind) => {
    const rows = view.ends.find((group) => group.kind === kind)?.rows ?? [];
    expect([kind, rows.length]).not.toEqual([kind, 0]);
    const clears = CLEARS[kind];
    for (const row of rows) {
      expect(view.places[row.id]).toBeDefined();
      if (clears === 'sheet') {
        expect([row.name, row.sheet]).toEqual([row.name, expect.stringMatching(/^\/cars\/C1\/joints\/J-/)]);
        continue;
      }
      const acts = row.acts.filter(({ type }) => clears.includes(type));
      expect([row.name, acts.length > 0 || row.waits.length > 0]).toEqual([row.name, true]);
      for (const act of acts)
        expect([act.type, hasForm(act), somebodyMay(view, act)]).toEqual([act.type, true, true]);
    }
    // One that only waits would be no way out.
    const isClear =
      clears === 'sheet' || rows.some(({ acts }) => acts.some(({ type }) => clears.includes(type)));
    expect([kind, isClear]).toEqual([kind, true]);
  });

  test('a lead finds there what only a lead may, and a technician is told who', () => {
    const hold = view.ends.find(({ kind }) => kind === 'hold')?.rows[0]?.acts[0];
    expect(hold?.type).toBe('release-hold');
    const whys = view.desk.whys[hold?.why ?? -1] ?? {};
    expect(whys['leo']).toBeUndefined();
    expect(whys['tom']).toBe('That is for a lead or an owner.');
  });
});

describe('given the demo shop', () => {
  const { world, stage } = demoOn('2026-11-25');
  const now = '2026-11-25T11:00:00.000Z';

  test.each(Object.keys(world.cars))('every line on the page of %s leads to a place that is there', (id) => {
    const car = world.cars[id];
    if (car === undefined) throw new Error(`no ${id}`);
    const command = { id: '', doneAt: now, claim: { type: 'deliver-car', car: id } as const };
    const facts = factsAt(world, stage, { now, by: 'mara', command });
    const found = planOf(facts, car);
    if (found === null) throw new Error('no plan');
    const setting = { name: 'Shop', zone: 'UTC' };
    const floor = Object.values(world.cars);
    const view = carViewOf(
      { shop: world.shop, car, plan: found, facts, setting, floor },
      { signature: null, lately: [], chosen: {}, stores: NO_STORES },
    );
    const lines = flat([...view.gate.lines, ...linesIn(allRows(view))]);
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.filter((line) => !leadsTo(view, line)).map(({ says, href }) => [says, href])).toEqual([]);
    expect(lines.filter(({ href }) => href === null).map(({ code }) => code)).toEqual([]);
  });
});

describe('given remarks', () => {
  const remarks = (view: CarView, id: string) =>
    allRows(view)
      .find((row) => row.id === id)
      ?.facts.filter(([label]) => label.startsWith('Remark'));

  test('then each stands in the row of its own thing, or of the work whose line it is, in its order', () => {
    const shop = shopWith(loose);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'add-note', of: 'AX-010', text: 'jack is slow' });
    shop.does('tess', { type: 'add-note', of: 'K-1', text: 'feeler gauge bent' });
    shop.does('tess', { type: 'add-note', of: 'P-1', text: 'comes on Friday' });
    const view = viewOf(shop);
    expect(remarks(view, 'operation:AX-010')).toEqual([
      ['Remark 1', expect.stringMatching(/^jack is slow \(Tom, /)],
      ['Remark 2', expect.stringMatching(/^K-1 Gap: feeler gauge bent \(Tess, /)],
    ]);
    expect(remarks(view, 'part:P-1')).toEqual([
      ['Remark', expect.stringMatching(/^comes on Friday \(Tess, /)],
    ]);
    expect(remarks(view, 'operation:AX-020')).toEqual([]);
    // Whoever reads the page may write one: it is no role's own.
    const note = view.desk.always.find(({ type }) => type === 'add-note');
    expect(note === undefined ? null : view.desk.whys[note.why]).toEqual({});
  });
});

test('what stands against an act goes with it, whoever looks, so that an open refusal can be followed', () => {
  const shop = withAllEnds();
  const refused = shop.codes('tom', { type: 'finish-operation', operation: 'AX-010' });
  expect(refused).toContain('check-not-clear');
  for (const me of ['tom', 'ada']) {
    const { ends, work, gate, desk } = viewOf(shop, me);
    const acts = [...ends, ...work].flatMap(({ rows }) => rows.flatMap((row) => row.acts));
    const said = (act: ActRef | undefined) =>
      (act?.reasons ?? []).map((index) => desk.reasons[index]?.refusal.code);
    const finish = acts.find(({ type, key }) => type === 'finish-operation' && key === 'AX-010');
    expect(said(finish)).toEqual(refused);
    expect(said(gate.acts.find(({ type }) => type === 'advance-car'))).toContain('hold-stands');
    // Bad news is never refused, and names nothing yet.
    expect(desk.always.flatMap(said)).toEqual([]);
  }
});
