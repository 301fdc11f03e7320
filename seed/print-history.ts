/** Prints one demo car's whole history as lines that `slipmark replay seed/corbel-54.yaml` reads. */
import { readFileSync } from 'node:fs';
import { planHash } from '@/lib/wire/plan-hash';
import { readPlan } from '@/lib/wire/read-plan';
import { buildOne } from './history';

const { document } = readPlan(readFileSync(new URL('corbel-54.yaml', import.meta.url), 'utf8'));
if (document === null) throw new Error('seed/corbel-54.yaml has errors; run `slipmark plan check` on it');
for (const { now, by, command } of buildOne(document, planHash(document), { id: 'C54-010' })) {
  const { claim, id, doneAt } = command;
  console.log(JSON.stringify({ now, by, command: { ...claim, id, doneAt } }));
}
