/** The lists beside the opened job: at hand, next, waiting, and what nobody was given. */
import { dueMark, waitLines } from '@/lib/server/queries/car/lines';
import type { Given, Seen } from '@/lib/server/queries/car/seen';
import { see } from '@/lib/server/queries/car/seen';
import { levelOf } from '@/lib/domain/car/joint';
import { durationWords } from '@/lib/wire/views/duration';
import type { RowSign } from '@/lib/wire/views/car';
import type { WorkLine, WorkList } from '@/lib/wire/views/my-work';
import { isWaiting } from './order';
import type { MyJob, Reason } from './order';
import { jobHref } from './opened';

const LISTS: readonly Pick<WorkList, 'id' | 'title' | 'says'>[] = [
  { id: 'mine', title: 'At hand', says: 'what you are at, and what you left' },
  { id: 'next', title: 'Next', says: 'may begin now, what comes first first' },
  { id: 'waiting', title: 'Waits', says: 'yours; each says for what' },
  { id: 'anybody', title: 'Given to nobody', says: 'ready in the stage that its car stands in' },
];

/** What the kit of a job lacks, in words. */
export type LacksOf = (mine: Pick<MyJob, 'car' | 'plan' | 'job'>) => string;

const listOf = (mine: MyJob): WorkList['id'] => {
  if (mine.reason === 'running') return 'mine';
  if (mine.reason === 'anybody') return 'anybody';
  if (isWaiting(mine)) return 'waiting';
  return mine.reason === 'begun' ? 'mine' : 'next';
};

export const listsOf = (
  givens: readonly Given[],
  jobs: readonly MyJob[],
  openedJob: string | null,
  openedCar: string | null,
  lacks: LacksOf,
): readonly WorkList[] => {
  const seen = new Map(givens.map((given) => [given.car.id, see(given)]));
  return LISTS.flatMap((list) => {
    const lines = jobs
      .filter((mine) => listOf(mine) === list.id)
      .flatMap((mine) => {
        const on = seen.get(mine.car.id);
        return on === undefined
          ? []
          : [lineFor(on, mine, mine.job.id === openedJob && mine.car.id === openedCar, lacks)];
      });
    return lines.length === 0 ? [] : [{ ...list, lines }];
  });
};

const WHY: Readonly<Record<Reason, string>> = {
  running: 'your clock runs',
  begun: 'begun by you',
  job: 'given to you',
  stage: 'your stage',
  lead: 'for a lead',
  anybody: 'given to nobody',
};

const lineFor = (seen: Seen, mine: MyJob, isOpened: boolean, lacks: LacksOf): WorkLine => {
  const { car, job, reason, waits } = mine;
  const minutes = job.kind === 'operation' ? (seen.plan.operations.get(job.key)?.minutes ?? 0) : 0;
  return {
    id: `${car.id} ${job.id}`,
    href: jobHref(car, job.id),
    car: { id: car.id, chassis: car.chassis, colour: car.colour },
    sign: signOf(seen, mine),
    name: nameOf(seen, mine),
    says: saysOf(seen, mine),
    why: WHY[reason],
    planned: minutes === 0 ? '' : durationWords(minutes),
    due: dueMark(seen, job.due),
    waits: waitLines(seen, waits),
    lacks: isWaiting(mine) ? '' : lacks(mine),
    isOpened,
  };
};

const nameOf = ({ words, car }: Seen, { job: { key } }: MyJob): string => {
  const more = car.findings[key]?.text ?? car.stopgaps[key]?.what;
  return more === undefined ? words.thing(key) : `${key} ${more}`;
};

const signOf = ({ car }: Seen, { job }: MyJob): RowSign => {
  switch (job.kind) {
    case 'operation':
      return job.state === 'running' ? 'gopen' : 'gap';
    case 'check':
      return car.checks[job.key]?.status === 'failed' ? 'failed' : 'due';
    case 'stopgap':
      return 'stopgap';
    case 'decide':
    case 'finding':
      return 'finding';
    case 'change':
      return 'deviation';
    case 'recheck':
    case 'renew':
    case 'retorque':
      return 'disturbed';
    case 'restore':
    case 'verify':
      return levelOf(car.joints[job.key]);
  }
};

const JOB_SAYS: Readonly<Record<Exclude<MyJob['job']['kind'], 'operation'>, string>> = {
  restore: 'was opened: bring it back',
  renew: 'in doubt: renew it',
  retorque: 'in doubt: torque it again in full',
  recheck: 'in doubt: try it again',
  verify: 'waits for a second person',
  check: 'to be looked at',
  stopgap: 'comes out',
  decide: 'a finding to decide',
  finding: 'work of a finding',
  change: 'a change to decide',
};

const saysOf = ({ car, tag }: Seen, { job, reason }: MyJob): string => {
  if (job.kind === 'finding' && car.findings[job.key]?.disposition === 'rework') return 'rework to be done';
  if (job.kind !== 'operation') return JOB_SAYS[job.kind];
  const row = car.operations[job.key];
  switch (job.state) {
    case 'running': {
      const others = (row?.present ?? []).map((id) => tag(id).name);
      return reason === 'running' ? 'running' : `${others.join(', ')} at work; takes more hands`;
    }
    case 'paused':
      return row?.leftAs === null || row === undefined ? 'paused' : `paused, left as: ${row.leftAs}`;
    case 'ready':
      return 'may begin';
    case 'waiting':
      return 'waits';
  }
};

export const readyWords = (jobs: readonly MyJob[]): string => {
  const ready = jobs.filter((mine) => mine.reason !== 'anybody' && !isWaiting(mine)).length;
  return ready === 0
    ? 'Nothing of yours can begin now.'
    : ready === 1
      ? 'One job of yours is ready.'
      : `${String(ready)} jobs of yours are ready.`;
};
