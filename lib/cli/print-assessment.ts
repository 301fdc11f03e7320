/** How a car stands: its next gate, its loose ends by kind, and its jobs. */
import { withPlace } from '@/lib/domain/base/words';
import type { Job } from '@/lib/domain/assess';
import { sentence } from '@/lib/domain/base/sentences';
import { counted } from '@/lib/domain/base/words';
import { LOOSE_END_KINDS } from '@/lib/domain/loose-ends';
import type { LooseEndKind } from '@/lib/domain/loose-ends';
import type { AssessedCar } from './play-lines';
import { printRefusals } from './print-verdict';
import type { Page } from './print-verdict';

const HEADINGS: Readonly<Record<LooseEndKind, string>> = {
  hold: 'Holds',
  finding: 'Findings',
  change: 'Changes',
  doubt: 'Joints in doubt',
  joint: 'Joints not brought to their level',
  check: 'Checks',
  operation: 'Operations',
  stopgap: 'Stopgaps',
  part: 'Parts owed',
};

export const printAssessment = (assessed: AssessedCar, page: Page): readonly string[] => [
  ...printGate(assessed, page),
  ...printLooseEnds(assessed, page),
  ...printJobs(assessed, page),
];

const printGate = ({ car, plan, assessment }: AssessedCar, page: Page): readonly string[] => {
  const stage = plan.stages[car.stage];
  const title = `${car.id}, chassis ${car.chassis}`;
  if (car.delivered) return [page.ink.strong(`${title}: delivered`)];
  const next = plan.stages[car.stage + 1];
  const way = next === undefined ? 'delivery' : `${next.name} (${next.key})`;
  const { unmet } = assessment.gate;
  const isHeldByEnds = next === undefined && assessment.looseEnds.length > 0;
  return [
    page.ink.strong(`${title}: in stage ${stage?.name ?? ''} (${assessment.stage})`),
    unmet.length === 0
      ? `  Gate to ${way}: ${isHeldByEnds ? 'closed by loose ends' : page.ink.good('open')}`
      : `  Gate to ${way}: closed by ${counted(unmet.length, 'thing')}`,
    ...printRefusals(unmet, page, '    '),
  ];
};

const printLooseEnds = ({ assessment, car, plan }: AssessedCar, page: Page): readonly string[] => {
  const { looseEnds } = assessment;
  if (looseEnds.length === 0) return ['  No loose ends'];
  const by = (due: number | null): string => {
    // What an earlier gate should have asked is asked by the next.
    const stage = due === null ? undefined : plan.stages[Math.max(due, car.stage)];
    return stage === undefined ? '' : page.ink.faint(` By gate ${stage.key}.`);
  };
  return [
    `  ${counted(looseEnds.length, 'loose end')}`,
    ...LOOSE_END_KINDS.flatMap((kind) => {
      const ends = looseEnds.filter((end) => end.kind === kind);
      if (ends.length === 0) return [];
      return [
        `    ${HEADINGS[kind]}`,
        ...ends.map(({ refusal, due }) => `      ${sentence(refusal, page.nameOf)}${by(due)}`),
      ];
    }),
  ];
};

const JOB_WORDS: Readonly<Record<Job['kind'], string>> = {
  operation: 'do',
  restore: 'bring back',
  renew: 'renew',
  retorque: 'torque again',
  recheck: 'recheck',
  verify: 'verify',
  check: 'check',
  stopgap: 'take out',
  decide: 'decide finding',
  finding: 'do the work of finding',
  change: 'decide change',
};

const printJobs = ({ car, assessment }: AssessedCar, page: Page): readonly string[] => {
  if (car.delivered) return [];
  const { jobs } = assessment;
  const inState = (...states: readonly Job['state'][]): readonly Job[] =>
    jobs.filter(({ state }) => states.includes(state));
  const waiting = inState('waiting');
  // What later gates ask waits for nearly everything: here it is counted, and listed once its gate comes near.
  const near = waiting.filter(({ due }) => due <= car.stage);
  const later = waiting.length - near.length;
  return [
    ...printGroup('Running', inState('running', 'paused'), page),
    ...printGroup('Ready', inState('ready'), page),
    ...printGroup('Waiting', near, page),
    ...(later === 0 ? [] : [`  Waiting for a later gate: ${counted(later, 'job')}`]),
  ];
};

const printGroup = (title: string, jobs: readonly Job[], page: Page): readonly string[] =>
  jobs.length === 0
    ? []
    : [`  ${title}: ${counted(jobs.length, 'job')}`, ...jobs.flatMap((job) => printJob(job, page))];

const printJob = (job: Job, page: Page): readonly string[] => {
  const name = page.nameOf(job.key);
  const who = job.who === null ? '' : ` [${job.who}]`;
  const paused = job.state === 'paused' ? ', paused' : '';
  const people = job.people.length === 0 ? '' : `, for ${job.people.join(', ')}`;
  return [
    `    ${JOB_WORDS[job.kind]} ${name === null ? job.key : `${withPlace(job.key, name)} (${job.key})`}${paused}${who}${people}`,
    ...job.waitsFor.map((refusal) => page.ink.faint(`      waits: ${sentence(refusal, page.nameOf)}`)),
  ];
};
