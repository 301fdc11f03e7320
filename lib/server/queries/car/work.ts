/** Work that is no loose end: what may begin, what waits and for what, what cures, what may be run again. */
import type { Job } from '@/lib/domain/assess';
import { waitEnd } from '@/lib/domain/car/wait';
import type { CompiledCheck, CompiledOperation } from '@/lib/domain/plan/compiled';
import type { RowView, WorkGroup } from '@/lib/wire/views/car';
import { anchorOf } from '@/lib/wire/views/said-line';
import { bodyRows } from './body-rows';
import { checkActs } from './check-acts';
import { jointNext } from './joint-rows';
import { dueMark, waitLines } from './lines';
import { placeKind } from './place-kind';
import { operationFacts, operationPeople, operationWord } from './operation-facts';
import type { Seen } from './seen';
import type { Acts } from './who-may';

export const workGroups = (seen: Seen, acts: Acts, anchors: Set<string>): readonly WorkGroup[] => {
  const { car, plan, assessment } = seen;
  const free = assessment.jobs.filter(({ kind, key }) => !anchors.has(anchorOf(placeKind(kind), key)));
  for (const { kind, key } of free) anchors.add(anchorOf(placeKind(kind), key));
  const curing = plan.all.operations.filter((each) => isCuring(seen, each));
  const again = plan.all.operations.filter(
    (each) =>
      each.repeatable && car.operations[each.stateKey]?.status === 'finished' && !curing.includes(each),
  );
  for (const { stateKey } of [...curing, ...again]) anchors.add(anchorOf('operation', stateKey));
  const loose = plan.all.checks.filter(
    (check) => standsAlone(seen, check) && !anchors.has(anchorOf('check', check.stateKey)),
  );
  for (const { stateKey } of loose) anchors.add(anchorOf('check', stateKey));

  const rowsOf = (isIn: (job: Job) => boolean): readonly RowView[] =>
    free.filter(isIn).map((job) => jobRow(seen, acts, anchors, job));
  const here = (job: Job): boolean => job.due <= car.stage;
  const ready = (job: Job): boolean => job.state !== 'waiting';
  return [
    {
      id: 'work:now',
      title: 'Ready in this stage',
      says: 'due by the gate before the car; may begin now',
      isOpen: true,
      rows: [
        ...rowsOf((job) => here(job) && ready(job)),
        ...loose.filter((check) => check.due <= car.stage).map((check) => checkRow(seen, acts, check)),
      ],
    },
    {
      id: 'work:waiting',
      title: 'Waiting in this stage',
      says: 'due by the gate before the car; each says what it waits for',
      isOpen: true,
      rows: rowsOf((job) => here(job) && !ready(job)),
    },
    {
      id: 'work:curing',
      title: 'Must rest',
      says: 'finished; what comes next waits until the time is over',
      isOpen: true,
      rows: curing.map((operation) => curingRow(seen, acts, operation)),
    },
    {
      id: 'work:ahead',
      title: 'Ready ahead of the stage',
      says: 'due by a later gate; may begin now',
      isOpen: false,
      rows: [
        ...rowsOf((job) => !here(job) && ready(job)),
        ...loose.filter((check) => check.due > car.stage).map((check) => checkRow(seen, acts, check)),
      ],
    },
    ...plan.stages.slice(car.stage + 1).map((stage): WorkGroup => ({
      id: `work:later:${stage.key}`,
      title: `Later, in ${stage.name}`,
      says: `due by ${dueMark(seen, stage.index).text}`,
      isOpen: false,
      rows: rowsOf((job) => job.due === stage.index && !ready(job)),
    })),
    {
      id: 'work:again',
      title: 'May be run again',
      says: 'finished, and of a kind that is done whenever it is needed',
      isOpen: false,
      rows: again.map((operation) => againRow(seen, acts, operation)),
    },
  ].filter(({ rows }) => rows.length > 0);
};

const jobRow = (seen: Seen, acts: Acts, anchors: ReadonlySet<string>, job: Job): RowView => {
  const kind = placeKind(job.kind);
  const base = {
    id: anchorOf(kind, job.key),
    name: seen.words.thing(job.key),
    due: dueMark(seen, job.due),
    job: job.id,
    keeper: 'nobody',
    waits: waitLines(seen, job.waitsFor),
  };
  const operation = job.kind === 'operation' ? seen.plan.operations.get(job.key) : undefined;
  if (operation !== undefined)
    return {
      ...base,
      sign: 'gap',
      says: workWords(job),
      who: operationPeople(seen, job.key, job),
      open: operationWord(job),
      sheet: null,
      // What waits is not offered: its reasons are.
      acts: job.state === 'waiting' ? [] : acts.all(job.allows, 'operation', job.key),
      body: bodyRows(seen, acts, operation, anchors),
      facts: operationFacts(seen, job.key),
    };
  const next = jointNext(seen, acts, job.key);
  return {
    ...base,
    ...next,
    sign: seen.car.joints[job.key]?.level ?? 'open',
    says: '',
    who: job.people.map((id) => seen.tag(id)),
    body: [],
    facts: [],
  };
};

const workWords = ({ state, waitsFor }: Job): string =>
  state === 'waiting'
    ? `waits for ${waitsFor.length === 1 ? 'one thing' : `${String(waitsFor.length)} things`}`
    : 'may begin';

const isCuring = ({ car, facts }: Seen, operation: CompiledOperation): boolean => {
  const wait = waitEnd(car.operations[operation.stateKey]);
  return typeof wait === 'object' && (wait.judged > facts.judgedAt || wait.received > facts.now);
};

const curingRow = (seen: Seen, acts: Acts, operation: CompiledOperation): RowView => {
  const key = operation.stateKey;
  const wait = waitEnd(seen.car.operations[key]);
  const until = typeof wait === 'object' ? (wait.judged > wait.received ? wait.judged : wait.received) : null;
  const isAsked = Object.values(seen.car.changes).some(
    (change) => change.state === 'asked' && change.edits.some((edit) => 'wait' in edit && edit.wait === key),
  );
  return {
    ...finishedRow(seen, operation),
    sign: 'clock',
    says: `${seen.plan.document.operations?.[operation.key]?.waitFor ?? 'rests'} until ${until === null ? '' : seen.when(until)}`,
    open: 'See it',
    acts: isAsked ? [] : acts.all(['ask-change'], 'operation', key),
  };
};

const againRow = (seen: Seen, acts: Acts, operation: CompiledOperation): RowView => ({
  ...finishedRow(seen, operation),
  sign: 'passed',
  says: 'is finished; it may be run again',
  open: 'Run again',
  acts: acts.all(['start-operation'], 'operation', operation.stateKey),
});

const finishedRow = (
  seen: Seen,
  { stateKey }: CompiledOperation,
): Pick<RowView, 'id' | 'name' | 'who' | 'due' | 'job' | 'keeper' | 'sheet' | 'waits' | 'body' | 'facts'> => {
  const row = seen.car.operations[stateKey];
  return {
    id: anchorOf('operation', stateKey),
    name: seen.words.thing(stateKey),
    who: (row?.crew ?? []).map((id) => seen.tag(id)),
    due: null,
    job: null,
    keeper: '',
    sheet: null,
    waits: [],
    body: [],
    facts: row === undefined || row.finishedAt === null ? [] : [['Finished', seen.when(row.finishedAt)]],
  };
};

/** Nothing brings one to it: it hangs on no operation, or its operation was finished before it was asked. */
const standsAlone = ({ car }: Seen, check: CompiledCheck): boolean =>
  car.checks[check.stateKey] === undefined &&
  check.undecided.length === 0 &&
  (check.operation === null || car.operations[check.operation]?.status === 'finished');

const checkRow = (seen: Seen, acts: Acts, { stateKey, due }: CompiledCheck): RowView => ({
  id: anchorOf('check', stateKey),
  sign: 'due',
  name: seen.words.thing(stateKey),
  says: 'is not done',
  who: [],
  due: dueMark(seen, due),
  job: null,
  keeper: 'nobody',
  open: 'Do it',
  sheet: null,
  acts: checkActs(seen, acts, stateKey),
  waits: [],
  body: [],
  facts: [],
});

/** Keys of operations that hold the page's earliest wait: it asks again when that is over. */
export const nextMoment = (seen: Seen): string | null => {
  const ends: string[] = [];
  for (const [key, row] of Object.entries(seen.car.operations)) {
    const wait = waitEnd(row);
    const operation = seen.plan.operations.get(key);
    if (operation === undefined || typeof wait !== 'object' || !isCuring(seen, operation)) continue;
    ends.push(wait.judged > wait.received ? wait.judged : wait.received);
  }
  return ends.sort()[0] ?? null;
};
