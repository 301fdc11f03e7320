/**
 * Prints history as lines that `slipmark replay seed/corbel-54.yaml --zone Europe/London` reads: one car from strip to
 * delivery, or with a day (`2026-11-25`) the whole demo shop as it stands on it.
 */
import { readFileSync } from 'node:fs';
import { planHash } from '@/lib/wire/plan-hash';
import { readPlan } from '@/lib/wire/read-plan';
import { demoLines } from './demo-day';
import { buildOne } from './history';
import { lineText } from './line-text';

const { document } = readPlan(readFileSync(new URL('corbel-54.yaml', import.meta.url), 'utf8'));
if (document === null) throw new Error('seed/corbel-54.yaml has errors; run `slipmark plan check` on it');
const plan = planHash(document);
const [today] = process.argv.slice(2);
const lines =
  today === undefined ? buildOne(document, plan, { id: 'C54-010' }) : demoLines(document, plan, today).lines;
for (const line of lines) console.log(lineText(line));
