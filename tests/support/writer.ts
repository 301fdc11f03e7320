/**
 * A server that does nothing but write: notes on two cars, several at once, for ever. One line on stdout for each
 * command that was acknowledged. A test kills it. `writer.ts URL TAG`
 */
import { randomUUID } from 'node:crypto';
import { openDatabase } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';

const [url = '', tag = ''] = process.argv.slice(2);
const db = openDatabase(url, 6);

const write = async (car: string): Promise<void> => {
  for (let n = 0; ; n += 1) {
    const now = new Date().toISOString();
    const id = randomUUID();
    const claim = { type: 'add-note', car, of: 'AX-010', text: `${tag} ${String(n)}` } as const;
    const answer = await runCommand(db, 'UTC', {
      command: { id, doneAt: now, claim },
      actor: 'tom',
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    // A write that is not flushed counts for nothing: whoever reads this must have it before the next is begun.
    if (answer.outcome === 'accepted')
      await new Promise((resolve) => process.stdout.write(`${id}\n`, resolve));
  }
};

await Promise.all(['C1', 'C1', 'C2', 'C2', 'C2', 'C1'].map(write));
