/** Loose ends as rows: each with its sentence, who keeps it, by which gate, and the acts that clear it. */
import type { Job, LooseEnd } from '@/lib/domain/assess';
import { LOOSE_END_KINDS } from '@/lib/domain/loose-ends';
import type { LooseEndKind } from '@/lib/domain/loose-ends';
import type { EndGroup, RowSign, RowView } from '@/lib/wire/views/car';
import { DISPOSITION_WORDS, SCOPE_WORDS } from '@/lib/wire/views/event-matters';
import { anchorOf } from '@/lib/wire/views/said-line';
import { bodyRows } from './body-rows';
import { checkActs } from './check-acts';
import { jointNext } from './joint-rows';
import { dueMark, lineOf, saidUnder, waitLines } from './lines';
import { editWords } from './matter-things';
import { comingActs, partSign } from './matters';
import { operationFacts, operationPeople, operationWord } from './operation-facts';
import { placeKind } from './place-kind';
import { clearingActs, finishedWork } from './rework';
import type { Seen } from './seen';
import type { Acts } from './who-may';

const TITLES: Readonly<Record<LooseEndKind, string>> = {
  hold: 'Holds',
  finding: 'Findings',
  change: 'Changes',
  doubt: 'In doubt',
  joint: 'Joints',
  check: 'Checks',
  operation: 'Work begun',
  stopgap: 'Stopgaps',
  part: 'Parts owed',
};

/** So many lines that nobody is asked for yet don't stand in the way of those that are. */
const MOST_LATER = 5;

/** In the rulebook's order, the gravest kinds first. `anchors` gathers what has its place here. */
export const endGroups = (seen: Seen, acts: Acts, anchors: Set<string>): readonly EndGroup[] => {
  const { looseEnds } = seen.assessment;
  // Every end takes its place before any row looks for a free one.
  const ids = new Map(looseEnds.map((end) => [end, takeId(anchors, end)]));
  return LOOSE_END_KINDS.flatMap((kind) => {
    const ends = looseEnds
      .filter((end) => end.kind === kind)
      .sort((a, b) => dueOrder(seen, a) - dueOrder(seen, b));
    if (ends.length === 0) return [];
    const rows = ends.map((end) => endRow(seen, acts, anchors, end, ids.get(end) ?? ''));
    const later = rows.filter(({ due }) => due?.isNow === false).length;
    return [{ kind, title: TITLES[kind], rows, folded: later > MOST_LATER ? later : 0 }];
  });
};

/** What is asked first stands first; among those asked together, the plan's own order. */
const dueOrder = ({ car, plan }: Seen, { due }: LooseEnd): number =>
  due === null
    ? car.stage === plan.stages.length - 1
      ? car.stage
      : plan.stages.length
    : Math.max(due, car.stage);

/** A joint may be short of its level and in doubt for several reasons: its first line has its anchor. */
const takeId = (anchors: Set<string>, { kind, key }: LooseEnd): string => {
  const own = anchorOf(kind === 'doubt' ? 'joint' : kind, key);
  let id = own;
  for (let more = 2; anchors.has(id); more += 1) id = `${own}:${String(more)}`;
  anchors.add(id);
  return id;
};

type Middle = Pick<RowView, 'sign' | 'name' | 'says' | 'who' | 'open' | 'sheet' | 'acts' | 'waits'> &
  Partial<Pick<RowView, 'body' | 'facts' | 'keeper'>>;

const endRow = (
  seen: Seen,
  acts: Acts,
  anchors: ReadonlySet<string>,
  end: LooseEnd,
  id: string,
): RowView => ({
  body: [],
  facts: [],
  keeper: 'nobody',
  id,
  due: dueMark(seen, dueOf(seen, end)),
  job: jobOf(seen, end),
  ...middleOf(seen, acts, anchors, end),
});

/** A hold on the gate is asked there; the rest of what has no gate of its own, by delivery. */
const dueOf = ({ car }: Seen, { kind, key, due }: LooseEnd): number | null =>
  kind === 'hold' && car.holds[key]?.scope === 'gate' ? car.stage : due;

const jobOf = ({ assessment }: Seen, { kind, key }: LooseEnd): string | null =>
  assessment.jobs.find(
    (job) => job.key === key && placeKind(job.kind) === (kind === 'doubt' ? 'joint' : kind),
  )?.id ?? null;

const middleOf = (seen: Seen, acts: Acts, anchors: ReadonlySet<string>, end: LooseEnd): Middle => {
  const { key, refusal } = end;
  const jobs = seen.assessment.jobs.filter((job) => job.key === key);
  const who = peopleOf(seen, jobs);
  const says = saidUnder(seen, refusal, key);
  const name = seen.words.thing(key);
  switch (end.kind) {
    case 'hold':
      return holdRow(seen, acts, key);
    case 'finding':
      return findingRow(seen, acts, key, jobs, says);
    case 'change':
      return changeRow(seen, acts, key, jobs);
    case 'doubt':
      return { ...jointNext(seen, acts, key), sign: 'disturbed', name, says, who };
    case 'joint':
      return {
        ...jointNext(seen, acts, key),
        ...jointWords(seen, key),
        name,
        says: openedWords(seen, key, says),
        who,
      };
    case 'check':
      return {
        sign:
          refusal.code === 'check-not-clear' && refusal.details.status.startsWith('failed')
            ? 'failed'
            : 'due',
        name,
        says,
        who,
        open: jobs.some(({ state }) => state !== 'waiting') ? 'Do it' : 'See why',
        sheet: null,
        acts: checkActs(seen, acts, key),
        waits: jobs.length > 0 ? waitsOf(seen, jobs) : findingLines(seen, key),
      };
    case 'operation':
      return operationRow(seen, acts, anchors, key, says);
    case 'stopgap':
      return { ...stopgapRow(seen, acts, key, says, who), waits: waitsOf(seen, jobs) };
    case 'part':
      return {
        sign: partSign(seen, key),
        name,
        says,
        who,
        open: seen.car.parts[key]?.state === 'out' ? 'Count in' : 'Receive',
        sheet: null,
        acts: acts.all(comingActs(seen, key), 'part', key),
        waits: [],
      };
  }
};

const peopleOf = (seen: Seen, jobs: readonly Job[]): RowView['who'] =>
  [...new Set(jobs.flatMap((job) => job.people))].map((id) => seen.tag(id));

/** What its jobs wait for. */
const waitsOf = (seen: Seen, jobs: readonly Job[]): RowView['waits'] =>
  waitLines(
    seen,
    jobs.flatMap((job) => (job.state === 'waiting' ? job.waitsFor : [])),
  );

const holdRow = (seen: Seen, acts: Acts, key: string): Middle => {
  const hold = seen.car.holds[key];
  const things = hold?.things ?? [];
  return {
    sign: 'hold',
    name: `${key} ${hold === undefined ? '' : SCOPE_WORDS[hold.scope]}`.trim(),
    says: `${hold?.reason ?? ''}${things.length === 0 ? '' : `: ${things.map(seen.words.thing).join(', ')}`}`,
    who: [],
    keeper: 'a lead',
    open: 'Release',
    sheet: null,
    acts: acts.all(['release-hold'], 'hold', key),
    waits: [],
    facts:
      hold === undefined ? [] : [['Placed', `${seen.when(hold.at)}, ${seen.tag(hold.by, hold.at).name}`]],
  };
};

const findingRow = (seen: Seen, acts: Acts, key: string, jobs: readonly Job[], says: string): Middle => {
  const row = seen.car.findings[key];
  const mine = jobs.filter(({ kind }) => kind === 'decide' || kind === 'finding');
  return {
    sign: 'finding',
    name: `${key} ${row?.text ?? ''}`.trim(),
    says,
    who: row?.state === 'undecided' ? [] : peopleOf(seen, mine),
    ...(row?.state === 'undecided' ? { keeper: 'a lead' } : {}),
    open: row?.state === 'undecided' ? 'Decide' : row?.disposition === 'rework' ? 'Rework' : 'Close',
    sheet: row?.about.kind === 'joint' ? jointNext(seen, acts, row.about.key).sheet : null,
    acts: [...clearingActs(seen, acts, row), ...mine.flatMap((job) => acts.all(job.allows, 'finding', key))],
    waits: waitLines(
      seen,
      mine.flatMap((job) => job.waitsFor),
    ),
    facts:
      row === undefined
        ? []
        : [
            ['Found', `${seen.when(row.at)}, ${seen.tag(row.by, row.at).name}`],
            ...(row.decidedBy === null
              ? []
              : [
                  [
                    'Decided',
                    `${row.disposition === null ? '' : DISPOSITION_WORDS[row.disposition]}, ${seen.tag(row.decidedBy).name}`,
                  ] as const,
                ]),
            ...finishedWork(seen, row),
          ],
  };
};

const changeRow = (seen: Seen, acts: Acts, key: string, jobs: readonly Job[]): Middle => {
  const row = seen.car.changes[key];
  const words = row === undefined ? '' : editWords(seen, row);
  return {
    sign: 'deviation',
    name: `${key} ${words}`.trim(),
    says: `is asked for: ${row?.reason ?? ''}. ${row?.critical === true ? 'Critical: an owner approves too.' : 'Somebody else approves.'}`,
    who: [],
    keeper: row?.critical === true ? 'an owner' : 'a lead',
    open: 'Decide',
    sheet: null,
    acts: jobs.filter(({ kind }) => kind === 'change').flatMap((job) => acts.all(job.allows, 'change', key)),
    waits: [],
    facts:
      row === undefined ? [] : [['Asked', `${seen.when(row.at)}, ${seen.tag(row.requestedBy, row.at).name}`]],
  };
};

const jointWords = (seen: Seen, key: string): { readonly sign: RowSign } => ({
  sign: seen.car.joints[key]?.level ?? 'open',
});

/** An opened joint says what it was (D27). */
const openedWords = ({ car, when, tag }: Seen, key: string, says: string): string => {
  const row = car.joints[key];
  return row?.opened === null || row?.opened === undefined || row.level !== 'open'
    ? says
    : `${says} It was ${row.opened.was}; opened ${when(row.opened.at)}, ${tag(row.opened.by, row.opened.at).name}.`;
};

/** A failed check is looked at again once its finding is decided. */
const findingLines = (seen: Seen, check: string): RowView['waits'] => {
  const finding = seen.car.checks[check]?.finding ?? null;
  const row = finding === null ? undefined : seen.car.findings[finding];
  return finding === null || row === undefined || row.state === 'closed'
    ? []
    : [lineOf(seen, { code: 'finding-undecided', details: { finding, about: row.about.key } })];
};

const operationRow = (
  seen: Seen,
  acts: Acts,
  anchors: ReadonlySet<string>,
  key: string,
  says: string,
): Middle => {
  const operation = seen.plan.operations.get(key);
  const job = seen.assessment.jobs.find((each) => each.kind === 'operation' && each.key === key);
  const leftAs = seen.car.operations[key]?.leftAs ?? null;
  return {
    sign: job?.state === 'running' ? 'gopen' : 'gap',
    name: seen.words.thing(key),
    says: leftAs === null || job?.state === 'running' ? says : `${says} Left as: ${leftAs}`,
    who: operationPeople(seen, key, job),
    open: operationWord(job),
    sheet: null,
    acts: acts.all(job?.allows ?? [], 'operation', key),
    waits: waitLines(seen, job?.waitsFor ?? []),
    body: operation === undefined ? [] : bodyRows(seen, acts, operation, anchors),
    facts: operationFacts(seen, key),
  };
};

const stopgapRow = (seen: Seen, acts: Acts, key: string, says: string, who: RowView['who']): Middle => {
  const row = seen.car.stopgaps[key];
  const planned = seen.plan.document.stopgaps?.[row?.stopgap ?? ''];
  return {
    sign: 'stopgap',
    name: `${key} ${row?.what ?? ''}`.trim(),
    says,
    who,
    open: 'Take out',
    sheet: null,
    acts: acts.all(['remove-stopgap'], 'stopgap', key),
    waits: [],
    facts: [
      ...(row === undefined || row.where === null ? [] : [['Where', row.where] as const]),
      ...(planned?.standsFor === undefined ? [] : [['Stands for', planned.standsFor] as const]),
      ...(row === undefined
        ? []
        : [['Placed', `${seen.when(row.at)}, ${seen.tag(row.by, row.at).name}`] as const]),
    ],
  };
};
