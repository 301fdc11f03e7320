/** A covered tablet: a check whose clock runs keeps its face, and that it fails is told as by the one who began it. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Claim } from '@/lib/domain/commands';
import { seatOf } from '@/lib/server/auth/session-row';
import { lockSession } from '@/lib/server/auth/idle';
import { answerWhileLocked } from '@/lib/server/door';
import { loadCar } from '@/lib/server/load/car';
import type { DoorAnswer } from '@/lib/wire/door';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';
import { knownDevice } from './shop';

const HOLD = plan({
  stages: { AX: { name: 'Axles' } },
  operations: { 'AX-010': { name: 'Hold', stage: 'AX', body: ['check K-1', 'check K-2'] } },
  checks: {
    'K-1': {
      name: 'Pressure',
      kind: 'functional',
      values: { weep: 'none' },
      holds: '10 min',
      source: 'invented',
    },
    'K-2': { name: 'Look', kind: 'visual' },
  },
});

let shop: StoredShop;
let session: string;
beforeAll(async () => {
  shop = await StoredShop.open(HOLD);
  await shop.startCar('A-1');
  await shop.must('tom', { type: 'start-operation', car: 'A-1', operation: 'AX-010' });
  ({ session } = await knownDevice(shop.db, 'tess'));
  await lockSession(shop.db, (await seatOf(shop.db, session))?.session ?? '');
});
afterAll(() => shop.close());

const give = async (claim: Claim): Promise<readonly [string, DoorAnswer]> => {
  const seat = await seatOf(shop.db, session);
  if (seat?.isLocked !== true) throw new Error('it is not locked');
  const id = randomUUID();
  const command = { id, doneAt: new Date().toISOString(), claim };
  return [id, await answerWhileLocked(shop.db, { command }, seat)];
};
const weeps: Claim = { type: 'fail-check', car: 'A-1', check: 'K-1', reason: 'weeps' };

test('nothing is said of a check that nobody began, nor of anything else', async () => {
  const others: readonly Claim[] = [
    weeps,
    { type: 'fail-check', car: 'A-1', check: 'K-2', reason: 'x' },
    { type: 'fail-check', car: 'A-9', check: 'K-1', reason: 'x' },
    { type: 'pause-operation', car: 'A-1', operation: 'AX-010' },
  ];
  for (const claim of others) {
    const [id, answer] = await give(claim);
    expect(answer.outcome).toBe('not-signed-in');
    expect(await shop.db.command.findUnique({ where: { id } })).toBeNull();
  }
});

test('that a running one weeps is recorded of who began it, with who was signed in beside', async () => {
  await shop.must('tom', { type: 'begin-check', car: 'A-1', check: 'K-1' });
  const [id, answer] = await give(weeps);
  expect(answer).toMatchObject({ outcome: 'accepted' });
  expect(await shop.db.command.findUniqueOrThrow({ where: { id } })).toMatchObject({
    actor: 'tom',
    present: 'tess',
  });
  expect((await loadCar(shop.db, 'A-1'))?.checks['K-1']).toMatchObject({ status: 'failed', by: 'tom' });
  // Its clock has stopped, so that nothing more is taken.
  expect((await give(weeps))[1]).toMatchObject({ outcome: 'not-signed-in' });
});
