/** What may be claimed about a check now. `assess` says so for those that were begun; the rest wait for their operation. */
import type { Job } from '@/lib/domain/assess';
import { COMMANDS } from '@/lib/domain/authority';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { ClaimType } from '@/lib/domain/commands';
import type { ActRef } from '@/lib/wire/views/desk';
import type { Seen } from './seen';
import type { Acts } from './who-may';

const BEGIN: readonly ClaimType[] = ['begin-check', 'fail-check'];
const LOOK: readonly ClaimType[] = ['pass-check', 'fail-check'];

export const checkActs = (seen: Seen, acts: Acts, key: StateKey): readonly ActRef[] => {
  if (seen.car.checks[key] !== undefined) return acts.all(jobActs(seen, key), 'check', key);
  const check = seen.plan.checks.get(key);
  return check === undefined ? [] : acts.all(check.holdsMs > 0 ? BEGIN : LOOK, 'check', key);
};

const jobActs = ({ assessment }: Seen, key: StateKey): readonly ClaimType[] =>
  assessment.jobs.flatMap((job) => (job.kind === 'check' && job.key === key ? allowed(job) : []));

/** What waits is not offered to be passed; that it fails may be said at any time. */
const allowed = ({ state, allows }: Job): readonly ClaimType[] =>
  state === 'waiting' ? allows.filter((type) => COMMANDS[type].kind === 'warning') : allows;
