/** A shop of one's own from nothing: its name and calendar, its steps, its people, its plans, by its real rows. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Claim } from '@/lib/domain/commands';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { newShop, setShop, UNNAMED } from '@/lib/server/new-shop';
import { peopleView } from '@/lib/server/queries/set-up/people';
import { startCarView } from '@/lib/server/queries/set-up/plans';
import { setUpSteps } from '@/lib/server/queries/set-up/steps';
import { runCommand } from '@/lib/server/run-command';
import { planHash } from '@/lib/wire/plan-hash';
import { readPlan } from '@/lib/wire/read-plan';
import { freshDatabase } from '@/tests/support/postgres';
import type { FreshDatabase } from '@/tests/support/postgres';

let fresh: FreshDatabase;
let db: Database;
beforeAll(async () => {
  fresh = await freshDatabase();
  db = openDatabase(fresh.url, 3);
  const owner = { id: 'nora', name: 'Nora Hallam' };
  await newShop(db, { name: UNNAMED, zone: 'UTC', owner }, new Date().toISOString());
});
afterAll(async () => {
  await db.$disconnect();
  await fresh.drop();
});

let given = 0;
const give = async (claim: Claim, actor = 'nora'): Promise<string> => {
  const now = new Date().toISOString();
  const { outcome } = await runCommand(db, 'UTC', {
    command: { id: `begin-${String((given += 1))}`, doneAt: now, claim },
    actor,
    present: null,
    device: null,
    lastContact: null,
    isInOrder: true,
    now,
  });
  return outcome;
};

const standing = async (): Promise<Readonly<Record<string, string>>> =>
  Object.fromEntries(
    (await setUpSteps(db)).steps.map(({ key, isDone, isLeft }) => [
      key,
      isDone ? 'done' : isLeft ? 'left' : 'to do',
    ]),
  );

const sound = (path: string): PlanDocument => {
  const { document, problems } = readPlan(readFileSync(path, 'utf8'));
  if (document === null) throw new Error(`${path} can’t be read`);
  expect(problems.filter(({ rank }) => rank === 'error')).toEqual([]);
  return document;
};

const nora = async () => {
  const found = (await loadShop(db)).people['nora'];
  if (found === undefined) throw new Error('Nora is not there');
  return found;
};

describe('step by step', () => {
  test('at first nothing is done', async () => {
    expect(await standing()).toEqual({
      shop: 'to do',
      people: 'to do',
      tablets: 'to do',
      tools: 'to do',
      plans: 'to do',
      cars: 'to do',
    });
    expect((await setUpSteps(db)).isBeginning).toBe(true);
  });

  test('a name and a calendar are kept, and the step is done by them', async () => {
    expect(await setShop(db, { name: 'Hollin Bank', zone: 'Europe/London' })).toBeNull();
    expect(await shopSetting(db)).toMatchObject({ name: 'Hollin Bank', zone: 'Europe/London', demo: false });
    expect((await standing())['shop']).toBe('done');
  });

  test('both plans come from their files; what stands before them is left for later', async () => {
    for (const path of ['seed/corbel-54.yaml', 'seed/lintel-gt.yaml']) {
      const kept = await keepPlan(db, sound(path));
      expect(await give({ type: 'release-plan', plan: 'hash' in kept ? kept.hash : '' })).toBe('accepted');
    }
    expect(await standing()).toMatchObject({
      people: 'left',
      tablets: 'left',
      tools: 'left',
      plans: 'done',
      cars: 'to do',
    });
    const { plans } = await startCarView(db);
    expect(plans.map(({ says }) => says)).toEqual(
      expect.arrayContaining([
        expect.stringContaining('Corbel 54'),
        expect.stringContaining('Lintel GT'),
      ]) as unknown,
    );
  });

  test('the same plan as JSON is the same plan', () => {
    const document = sound('seed/lintel-gt.yaml');
    const { document: again, problems } = readPlan(JSON.stringify(document, null, 2));
    expect(problems.filter(({ rank }) => rank === 'error')).toEqual([]);
    expect(again === null ? null : planHash(again)).toBe(planHash(document));
  });

  test('once a car is begun the calendar stays; the name may still change', async () => {
    const plan = (await startCarView(db)).plans[0]?.hash ?? '';
    expect(await give({ type: 'start-car', car: 'HB-001', plan, chassis: 'HB-001' })).toBe('accepted');
    expect((await setUpSteps(db)).isBeginning).toBe(false);
    expect(await setShop(db, { name: 'Hollin Bank', zone: 'Europe/Paris' })).toMatch(/calendar stays/);
    expect(await setShop(db, { name: 'Hollin Bank Cars', zone: 'Europe/London' })).toBeNull();
    expect(await shopSetting(db)).toMatchObject({ name: 'Hollin Bank Cars', zone: 'Europe/London' });
  });
});

describe('a qualification on the page of people', () => {
  const held = async (key: string) =>
    (await peopleView(db, await nora())).people
      .find(({ id }) => id === 'elin')
      ?.held.find((each) => each.key === key);

  test('is told by the record that counts, ends, and can be given again', async () => {
    expect(
      await give({
        type: 'add-person',
        person: 'elin',
        name: 'Elin Marsh',
        roles: ['technician'],
        qualifications: [{ key: 'brakes', until: '2020-06-30' }, { key: 'fuel' }],
      }),
    ).toBe('accepted');
    expect(await held('brakes')).toMatchObject({ says: 'ended 30 Jun 2020', mayEnd: false });
    expect(await held('fuel')).toMatchObject({ says: 'holds', isEnding: false, mayEnd: true });

    await give({ type: 'qualify-person', person: 'elin', qualification: { key: 'brakes' } });
    expect(await held('brakes')).toMatchObject({ says: 'holds', mayEnd: true });

    const { yesterday } = await peopleView(db, await nora());
    expect(await give({ type: 'end-qualification', person: 'elin', key: 'brakes', last: yesterday })).toBe(
      'accepted',
    );
    expect(await held('brakes')).toMatchObject({ isEnding: true, mayEnd: false });
    expect(await db.person.findUnique({ where: { id: 'elin' }, select: { row: true } })).toMatchObject({
      row: {
        qualifications: [{ key: 'brakes', until: '2020-06-30' }, { key: 'fuel' }, { until: yesterday }],
      },
    });
  });

  test('who may be removed, and by whom', async () => {
    await give({ type: 'add-person', person: 'tam', name: 'Tam Okoro', roles: ['lead'] });
    const tam = (await loadShop(db)).people['tam'];
    if (tam === undefined) throw new Error('Tam is not there');
    const may = Object.fromEntries(
      (await peopleView(db, tam)).people.map(({ id, mayRemove }) => [id, mayRemove]),
    );
    expect(may).toEqual({ nora: false, elin: true, tam: false });
    expect(await give({ type: 'remove-person', person: 'nora' }, 'tam')).toBe('refused');
    expect(await give({ type: 'remove-person', person: 'nora' })).toBe('refused');
    expect(await give({ type: 'remove-person', person: 'elin' }, 'tam')).toBe('accepted');
  });
});

test('what the address asks of a session stays, and our limits come after it', async () => {
  const address = new URL(fresh.url);
  address.searchParams.set('options', '-c work_mem=5MB -c statement_timeout=0');
  const asked = openDatabase(address.href, 1);
  try {
    const [row] = await asked.$queryRaw<object[]>`
      SELECT current_setting('work_mem') AS memory, current_setting('statement_timeout') AS statement,
        current_setting('lock_timeout') AS lock`;
    expect(row).toEqual({ memory: '5MB', statement: '10s', lock: '8s' });
  } finally {
    await asked.$disconnect();
  }
});
