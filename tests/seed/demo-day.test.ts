/** The demo shop's history: the same for the same day, all of it past, at working hours, and true to a shop. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PLAIN_INK } from '@/lib/cli/ink';
import { replay } from '@/lib/cli/replay';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import { lastShownDay } from '@/seed/floor/calendar';
import { demoDay, shownDayOf } from '@/seed/demo-day';
import { DEMO_PEOPLE, DEMO_SIGN_INS, DEMO_ZONE } from '@/seed/demo-shop';
import type { GivenLine } from '@/seed/driver';
import { lineText, linesOnPlan } from '@/seed/line-text';
import { PLANS, demoOn } from '@/tests/support/demo';

const dayOf = shopDay(DEMO_ZONE);
const timeOf = shopTime(DEMO_ZONE);
const WEDNESDAY = '2026-11-25';

/** A Monday, a Saturday, days after the clocks changed, and one whose history lies in two years. */
const DAYS = [WEDNESDAY, '2026-12-07', '2026-06-20', '2027-01-14'];

const carOf = ({ command: { claim } }: GivenLine): string => ('car' in claim ? claim.car : 'shop');

describe.each(DAYS)('shown on %s', (today) => {
  const { lines, world } = demoOn(today);

  test('ends that morning, and nothing of it is still to come', () => {
    expect(dayOf(lines.at(-1)?.now ?? '')).toBe(today);
    expect(
      lines.filter(({ now }) => dayOf(now) > today || (dayOf(now) === today && timeOf(now) > '11:00')),
    ).toEqual([]);
    expect(lines.map(({ now }) => now)).toEqual(lines.map(({ now }) => now).toSorted());
  });

  test('happens in working hours', () => {
    const odd = lines.filter(({ now, command: { claim } }) => {
      const weekday = new Date(`${dayOf(now)}T12:00:00Z`).getUTCDay();
      const isClosed = dayOf(now) !== today && (weekday === 0 || weekday === 6);
      // A joint that was torqued at closing time is looked at a few minutes after it.
      return 'car' in claim && (isClosed || timeOf(now) < '08:00' || timeOf(now) > '17:15');
    });
    expect(odd).toEqual([]);
  });

  test('has the six cars at their places', () => {
    const cars = Object.values(world.cars).map(({ id, stage }) => [id, stage] as const);
    expect(Object.fromEntries(cars)).toEqual({
      'C54-011': 9,
      'C54-012': 5,
      'C54-013': 4,
      'C54-014': 3,
      'C54-015': 2,
      'LGT-001': 1,
    });
  });

  test('nobody works on two things at once', () => {
    const on = new Map<string, string>();
    for (const line of lines) {
      const { claim } = line.command;
      if (line.refused !== undefined || !('operation' in claim)) continue;
      const thing = `${claim.car} ${claim.operation}`;
      if (claim.type === 'finish-operation' || claim.type === 'pause-operation') {
        for (const [person, each] of on) if (each === thing) on.delete(person);
        continue;
      }
      expect([line.now, line.by, on.get(line.by) ?? thing]).toEqual([line.now, line.by, thing]);
      on.set(line.by, thing);
    }
    // Four are at it as it is shown, on three cars.
    const cars = [...on.values()].map((thing) => thing.split(' ')[0]);
    expect(cars.toSorted()).toEqual(['C54-011', 'C54-015', 'LGT-001', 'LGT-001']);
  });
});

test('the same day gives the same lines, with ids that are UUIDs', () => {
  const { lines } = demoOn(WEDNESDAY);
  expect(demoDay(PLANS, WEDNESDAY).lines).toEqual(lines);
  const ids = lines.map(({ command }) => command.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(
    ids.filter((id) => !/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id)),
  ).toEqual([]);
});

test('`replay` reads the same lines and gives the same answers, the refused ones too', () => {
  const folder = mkdtempSync(join(tmpdir(), 'slipmark-demo-'));
  const file = join(folder, 'day.jsonl');
  try {
    const { lines } = demoOn(WEDNESDAY);
    const own = linesOnPlan(lines, PLANS.corbel.hash);
    expect([own.length > 2500, own.length < lines.length]).toEqual([true, true]);
    writeFileSync(file, own.map(lineText).join('\n'));
    const { exit, out } = replay('seed/corbel-54.yaml', file, { zone: DEMO_ZONE }, PLAIN_INK);
    expect([exit, exit === 0 ? '' : out.slice(-5).join('\n')]).toEqual([0, '']);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test('the day that is shown can be told from the first line', () => {
  for (const today of DAYS) expect(shownDayOf(demoOn(today).lines[0]?.now ?? '', dayOf)).toBe(today);
});

test('is shown as of today once the morning is over, and never on a Sunday', () => {
  const shown = (now: string): string => lastShownDay(now, DEMO_ZONE);
  expect(shown('2026-11-25T11:00:00.000Z')).toBe('2026-11-25');
  expect(shown('2026-11-25T10:59:00.000Z')).toBe('2026-11-24');
  expect(shown('2026-11-28T15:00:00.000Z')).toBe('2026-11-28');
  expect(shown('2026-11-29T15:00:00.000Z')).toBe('2026-11-28');
  expect(shown('2026-11-30T07:00:00.000Z')).toBe('2026-11-28');
  expect(shown('2026-07-01T10:00:00.000Z')).toBe('2026-07-01');
});

test('everybody can sign in: three words of fifteen letters or more, and a PIN of six figures', () => {
  expect(DEMO_SIGN_INS.map(({ person }) => person)).toEqual(DEMO_PEOPLE.map(({ person }) => person));
  for (const { password, pin } of DEMO_SIGN_INS) {
    expect(password.length).toBeGreaterThanOrEqual(15);
    expect(pin).toMatch(/^\d{6}$/);
  }
  expect(new Set(DEMO_SIGN_INS.map(({ pin }) => pin)).size).toBe(DEMO_SIGN_INS.length);
});

describe('history shows the rules at work', () => {
  const { lines, world } = demoOn(WEDNESDAY);
  const of = (type: string): readonly GivenLine[] =>
    lines.filter(({ command }) => command.claim.type === type);
  test('what was refused stays on record, for its reason', () => {
    const refused = lines.flatMap((line) =>
      line.refused === undefined ? [] : [[carOf(line), line.refused]],
    );
    expect(refused).toEqual([
      ['C54-011', ['operation-unfinished', 'stopgap-in-place']],
      ['C54-011', ['doubt-needs-more']],
      ['C54-012', ['tool-out-of-calibration']],
      ['C54-012', ['not-independent']],
    ]);
  });

  test('a worn part was replaced on both sides, as the lead decided', () => {
    const row = world.cars['C54-011'];
    expect(row?.findings['F-1']).toMatchObject({
      disposition: 'replace',
      decidedBy: 'mara',
      state: 'closed',
    });
    expect(row?.parts['P-34']?.piece).toBe(2);
  });

  test('a car was sent back for a weeping nut, bled again and let on', () => {
    expect(of('send-back').map(carOf)).toEqual(['C54-011']);
    expect(world.cars['C54-011']?.operations['ST-130']?.run).toBe(2);
  });

  test('hardware that is traced went in by lot, and one lot without its paper was never used', () => {
    const lots = new Set(
      Object.values(world.cars).flatMap(({ joints }) => Object.values(joints).flatMap((row) => row.lots)),
    );
    expect(lots.size).toBeGreaterThan(50);
    const apart = Object.values(world.shop.lots).filter(({ quarantined }) => quarantined !== null);
    expect(apart.map(({ id }) => [id, lots.has(id)])).toEqual([
      ['L-0933', false],
      ['L-0941', true],
    ]);
  });

  test('of a dozen tools one is out of calibration, one was dropped, one came back reading high', () => {
    const tools = Object.values(world.shop.tools);
    expect(tools.length).toBeGreaterThanOrEqual(12);
    const out = tools.filter(({ calibrations }) => (calibrations.at(-1)?.due ?? '') < WEDNESDAY);
    expect(out.map(({ id }) => id)).toEqual(['T-03']);
    expect(
      tools.flatMap(({ id, suspect }) => suspect.map(({ reason, until }) => [id, reason, until === null])),
    ).toEqual([
      ['T-12', 'dropped', true],
      ['T-14', 'as-found', false],
    ]);
  });
});
