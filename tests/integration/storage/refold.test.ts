/** Invariant 6 on the real store: after a random history, rows, log and the rules' own world are the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toRows } from '@/lib/domain/car/codec';
import type { Car } from '@/lib/domain/car/rows';
import { toShopRows } from '@/lib/domain/shop/codec';
import type { Command } from '@/lib/domain/commands';
import { canonicalJson } from '@/lib/wire/canonical-json';
import { openDatabase } from '@/lib/server/database';
import { loadCar } from '@/lib/server/load/car';
import { keepPlan } from '@/lib/server/load/plan';
import { loadShop } from '@/lib/server/load/shop';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { OWNER, PLAN } from '@/tests/support/game';
import { putPhoto } from '@/tests/support/photos';
import { freshDatabase } from '@/tests/support/postgres';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES } from '@/tests/support/rules';

const HISTORIES = 12;
const SEED = Number(process.env.SLIPMARK_SEED ?? 541954);

const text = (value: unknown): string => canonicalJson(JSON.parse(JSON.stringify(value)) as unknown);
const carText = (car: Car | null): readonly string[] => (car === null ? [] : toRows(car).map(text).sort());

/** The game's plan has a made-up hash; the store takes real ones only. */
const onPlan = (command: Command, hash: string): Command => ({
  ...command,
  claim: 'plan' in command.claim ? { ...command.claim, plan: hash } : command.claim,
});

test(`${String(HISTORIES)} random histories give the same rows in the store as in the rules`, async () => {
  await fc.assert(
    fc.asyncProperty(randomHistory, async (history) => {
      const game = playHistory(RULES, history);
      const at = await freshDatabase();
      const db = openDatabase(at.url, 3);
      // A second server that has everything still to read.
      const other = openDatabase(at.url, 3);
      try {
        const kept = await keepPlan(db, history.plan);
        if (!('hash' in kept)) throw new Error('the plan is there already');
        let isReleased = false;
        for (const [index, line] of game.lines.entries()) {
          const give = (id: string, actor: string, command: Command): ReturnType<typeof runCommand> =>
            // Now one server, now the other: neither may believe what it remembers.
            runCommand(index % 3 === 0 ? other : db, 'UTC', {
              command: { ...command, id },
              actor,
              present: null,
              device: line.device ?? null,
              lastContact: line.lastContact ?? null,
              isInOrder: true,
              now: line.now,
            });
          if (line.command.claim.type === 'start-car' && !isReleased) {
            isReleased = true;
            const claim = { type: 'release-plan', plan: kept.hash } as const;
            await give('release', OWNER, { id: 'release', doneAt: line.now, claim });
          }
          if (line.command.claim.type === 'add-photo') await putPhoto(db, line.command.claim, line.by);
          const answer = await give(line.command.id, line.by, onPlan(line.command, kept.hash));
          if (answer.outcome !== 'accepted')
            throw new Error(`the store refused what the rules accept: ${JSON.stringify([line, answer])}`);
        }
        for (const car of Object.values(game.world.cars)) {
          expect(car.plan).toBe(PLAN);
          expect(carText(await loadCar(other, car.id))).toEqual(carText({ ...car, plan: kept.hash }));
          expect(carText(await loadCar(db, car.id))).toEqual(carText({ ...car, plan: kept.hash }));
        }
        const shopText = (await loadShop(other)).tools;
        expect(text(shopText)).toBe(text(game.world.shop.tools));
        const stored = toShopRows(await loadShop(db)).filter(({ table }) => table !== 'plan_release');
        expect(stored.map(text).sort()).toEqual(toShopRows(game.world.shop).map(text).sort());
        expect((await verifyLog(other)).faults).toEqual([]);
      } finally {
        await db.$disconnect();
        await other.$disconnect();
        await at.drop();
      }
    }),
    { numRuns: HISTORIES, seed: SEED, endOnFailure: true },
  );
}, 180_000);
