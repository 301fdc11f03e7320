/** One id, one effect, one answer, however often and from wherever it comes (D3, D5; reliability T5, T6). */
import { randomUUID } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PrismaClient } from '@/prisma/generated/client';
import { openDatabase } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open();
  await shop.startCar('C1');
});
afterAll(() => shop.close());

const note = { type: 'add-note', car: 'C1', of: 'AX-010', text: 'left wheel first' } as const;

describe('the same id', () => {
  test('fifty times at once, over two servers: one effect, one answer', async () => {
    const other = openDatabase(shop.at.url, 5);
    const given = shop.given('tom', note, { id: randomUUID() });
    const before = await shop.db.event.count();
    const answers = await Promise.all(
      Array.from({ length: 50 }, (_, index) => runCommand(index % 2 === 0 ? shop.db : other, 'UTC', given)),
    );
    await other.$disconnect();
    expect(await shop.db.event.count()).toBe(before + 1);
    expect(answers.filter((answer) => answer.outcome === 'accepted' && !answer.already)).toHaveLength(1);
    const said = answers.map((answer) => (answer.outcome === 'accepted' ? answer.version : answer.outcome));
    expect(new Set(said).size).toBe(1);
  });

  test('with another claim, another signer or another device is refused, and stores nothing', async () => {
    const id = randomUUID();
    await shop.must('tom', note, { id });
    const now = new Date(Date.parse('2026-03-02T09:00:00.000Z')).toISOString();
    const before = await shop.db.event.count();
    const base = shop.given('tom', note, { id, now });
    const others = [
      { ...base, command: { ...base.command, claim: { ...note, text: 'right wheel first' } } },
      { ...base, actor: 'tess' },
      { ...base, device: 'another-tablet' },
    ];
    for (const other of others) expect(await shop.run(other)).toEqual({ outcome: 'conflict' });
    expect(await shop.db.event.count()).toBe(before);
  });

  test('keeps its refusal, even when what was in the way is gone', async () => {
    const id = randomUUID();
    const claim = { type: 'finish-operation', car: 'C1', operation: 'AX-020' } as const;
    const given = shop.given('tess', claim, { id });
    const first = await shop.run(given);
    expect(first).toMatchObject({ outcome: 'refused', already: false });
    await shop.must('tess', { type: 'start-operation', car: 'C1', operation: 'AX-020' });
    await shop.must('tess', { type: 'pass-check', car: 'C1', check: 'K-1' });
    await shop.must('tess', { type: 'place-stopgap', car: 'C1', stopgap: 'G-1' });
    expect(await shop.run(given)).toEqual({ ...first, already: true });
    await shop.must('tess', claim);
  });
});

test('a refusal lists every reason and changes nothing but the register of commands', async () => {
  const before = await shop.db.stream.findUnique({ where: { id: 'car:C1' } });
  const answer = await shop.give('leo', { type: 'advance-car', car: 'C1', to: 'WH' });
  expect(answer.outcome === 'refused' ? answer.refusals.map(({ code }) => code) : []).toEqual([
    'operation-unfinished',
  ]);
  expect(await shop.db.stream.findUnique({ where: { id: 'car:C1' } })).toEqual(before);
});

test('a car that two people begin at once is begun once', async () => {
  const answers = await Promise.all(
    ['leo', 'ada', 'leo', 'ada'].map((person) =>
      shop.give(person, { type: 'start-car', car: 'C2', plan: shop.plan, chassis: 'C2' }),
    ),
  );
  expect(answers.filter(({ outcome }) => outcome === 'accepted')).toHaveLength(1);
  const refused = answers.flatMap((answer) => (answer.outcome === 'refused' ? answer.refusals : []));
  expect(refused.map(({ code }) => code)).toEqual(['already-there', 'already-there', 'already-there']);
});

test('a car is begun on a released revision only', async () => {
  const answer = await shop.give('leo', {
    type: 'start-car',
    car: 'C3',
    plan: 'f'.repeat(64),
    chassis: 'C3',
  });
  expect(answer).toMatchObject({ outcome: 'refused', refusals: [{ code: 'unknown-thing' }] });
});

test('every use of a counted tool adds up over cars that use it at once', async () => {
  // One person each: nobody is at work on two cars at once.
  const cars = [
    ['U1', 'ada'],
    ['U2', 'leo'],
    ['U3', 'tom'],
    ['U4', 'tess'],
  ] as const;
  const used = async (): Promise<number> =>
    (await shop.db.tool.findUniqueOrThrow({ where: { id: 'T-02' }, select: { used: true } })).used ?? 0;
  const before = await used();
  await Promise.all(cars.map(([car, person]) => shop.carAtOpenGate(car, person, person)));
  // Two taps in each of the passes, of which there is one.
  expect(await used()).toBe(before + 2 * cars.length);
});

/** Between BEGIN and COMMIT (design 8, D37): fewer, since nothing else may happen to the car meanwhile. */
test('a command takes at most five round trips; one, with no BEGIN, where all that it rests on is kept', async () => {
  const db = new PrismaClient({
    adapter: new PrismaPg({ connectionString: shop.at.url, max: 2 }),
    log: [{ emit: 'event', level: 'query' }],
  });
  let asked: string[] = [];
  db.$on('query', ({ query }) => asked.push(query));
  const trips = async (actor: string, claim: Parameters<StoredShop['given']>[1]): Promise<number> => {
    asked = [];
    expect((await runCommand(db, 'UTC', shop.given(actor, claim))).outcome).toBe('accepted');
    const inside = asked.slice(asked.findIndex((query) => query.includes('claimed AS')));
    const commit = inside.findIndex((query) => query.startsWith('COMMIT'));
    return commit < 0 ? inside.length : commit;
  };
  const note = { type: 'add-note', car: 'T1', of: 'AX-010', text: 'a' } as const;
  await shop.carAtOpenGate('T1');
  expect(await trips('leo', { type: 'advance-car', car: 'T1', to: 'WH' })).toBe(5);
  expect(await trips('tom', note)).toBe(1);
  expect(await trips('leo', { type: 'send-back', car: 'T1', to: 'AX', reason: 'again' })).toBe(1);
  await shop.must('tom', note);
  // Foreseen in vain, and then under its locks: claim, the car's rows, write.
  expect(await trips('tom', note)).toBe(4);
  await db.$disconnect();
});
