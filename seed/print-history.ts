/**
 * Prints history as lines that `slipmark replay seed/corbel-54.yaml --zone Europe/London` reads: one car from strip to
 * delivery, or with a day (`2026-11-25`) the demo shop as it stands on it, but for the car on the other plan.
 */
import { demoLines } from './demo-day';
import { demoPlans } from './demo-plans';
import { buildOne } from './history';
import { lineText, linesOnPlan } from './line-text';

const plans = demoPlans();
const { document, hash } = plans.corbel;
const [today] = process.argv.slice(2);
const lines =
  today === undefined
    ? buildOne(document, hash, { id: 'C54-010' })
    : linesOnPlan(demoLines(plans, today).lines, hash);
for (const line of lines) console.log(lineText(line));
