/** Nobody has two running clocks: whatever a person is at is paused, so that a test may have them begin elsewhere. */
import { randomUUID } from 'node:crypto';
import type { Database } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';

export const freeClock = async (db: Database, person: string): Promise<void> => {
  const running = await db.$queryRaw<{ car: string; operation: string }[]>`
    SELECT car, key AS operation FROM car_operation
    WHERE status = 'running' AND row -> 'present' @> to_jsonb(${person}::text)`;
  for (const { car, operation } of running) {
    const now = new Date().toISOString();
    const answer = await runCommand(db, 'UTC', {
      command: { id: randomUUID(), doneAt: now, claim: { type: 'pause-operation', car, operation } },
      actor: person,
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    if (answer.outcome !== 'accepted') throw new Error(`${operation} of ${car}: ${JSON.stringify(answer)}`);
  }
};
