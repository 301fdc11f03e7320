/** The two models that the demo shop builds, read from their files. */
import { readFileSync } from 'node:fs';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planHash } from '@/lib/wire/plan-hash';
import { readPlan } from '@/lib/wire/read-plan';

export interface DemoPlan {
  readonly hash: string;
  readonly document: PlanDocument;
}

export interface DemoPlans {
  readonly corbel: DemoPlan;
  readonly lintel: DemoPlan;
}

export const demoPlans = (): DemoPlans => ({
  corbel: read('corbel-54.yaml'),
  lintel: read('lintel-gt.yaml'),
});

const read = (file: string): DemoPlan => {
  const { document } = readPlan(readFileSync(new URL(file, import.meta.url), 'utf8'));
  if (document === null) throw new Error(`seed/${file} has errors; run \`slipmark plan check\` on it`);
  return { hash: planHash(document), document };
};
