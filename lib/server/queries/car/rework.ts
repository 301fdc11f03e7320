/** What a decided finding asks of work that is finished: which work it is on, and what clears it. */
import type { FindingRow } from '@/lib/domain/car/rows';
import type { RowView } from '@/lib/wire/views/car';
import { checkActs } from './check-acts';
import type { Seen } from './seen';
import type { Acts } from './who-may';

/** Once it is decided, the further look at its check clears it: offered where the rework is told of. */
export const clearingActs = (seen: Seen, acts: Acts, row: FindingRow | undefined): RowView['acts'] => {
  const check = row?.state === 'decided' ? (row.check?.key ?? null) : null;
  const isReady =
    check !== null && seen.assessment.jobs.some((job) => job.key === check && job.state !== 'waiting');
  return isReady ? checkActs(seen, acts, check) : [];
};

/** Rework on what is finished begins no new run of it: the finding says which work it is on. */
export const finishedWork = ({ plan, car, words, when }: Seen, row: FindingRow): RowView['facts'] => {
  const { about, check } = row;
  const works =
    about.kind === 'joint'
      ? (plan.joints.get(about.key)?.broughtBy ?? []).map(({ operation }) => operation)
      : [plan.checks.get(check?.key ?? '')?.operation ?? ''];
  return [...new Set(works)].flatMap((key) => {
    const finishedAt = car.operations[key]?.status === 'finished' ? car.operations[key].finishedAt : null;
    return finishedAt === null ? [] : [['On', `${words.thing(key)}, finished ${when(finishedAt)}`] as const];
  });
};
