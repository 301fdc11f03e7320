/** The job that is opened, whole. Its row, its acts and its forms are those of the car's page: one truth for both. */
import type { Ask } from '@/lib/domain/asks';
import { asksOn } from '@/lib/domain/asks';
import type { Car } from '@/lib/domain/car/rows';
import type { Job } from '@/lib/domain/assess';
import { operationFacts } from '@/lib/server/queries/car/operation-facts';
import type { Given, Seen } from '@/lib/server/queries/car/seen';
import { see } from '@/lib/server/queries/car/seen';
import type { OnShelf } from '@/lib/domain/shop/shelf';
import { carViewOf } from '@/lib/server/queries/car/view';
import type { CarView, RowView } from '@/lib/wire/views/car';
import type { AskedLine, OpenedJob } from '@/lib/wire/views/my-work';
import { anchorOf } from '@/lib/wire/views/said-line';
import { jobJoint, jointsOf, toolLines, torqueLine, torqueOf } from './job-things';
import { kitLines } from './kit-lines';
import type { ReachOf } from './kit-lines';

export const JOB_WORDS: Readonly<Record<Job['kind'], string>> = {
  operation: 'Operation',
  restore: 'Restore',
  renew: 'Renew',
  retorque: 'Torque again',
  recheck: 'Try again',
  verify: 'Verify',
  check: 'Check',
  stopgap: 'Stopgap to take out',
  decide: 'Finding to decide',
  finding: 'Work of a finding',
  change: 'Change to decide',
};

/** What stock says of the opened job. */
export interface Stocked {
  readonly reach: ReachOf;
  readonly lacks: string;
  readonly shelf: readonly OnShelf[];
}

/** Null where the car's page has no line for it. */
export const openedJob = (given: Given, job: Job, { reach, lacks, shelf }: Stocked): OpenedJob | null => {
  const seen = see(given);
  const view = carViewOf(given, {
    signature: null,
    lately: [],
    chosen: {},
    stores: { bins: given.shop.bins, shelf },
  });
  const row = rowOf(view, job.id);
  if (row === null) return null;
  const operation = job.kind === 'operation' ? seen.plan.operations.get(job.key) : undefined;
  const entry = seen.plan.document.operations?.[operation?.key ?? ''];
  const own = seen.plan.joints.has(job.key) ? [jobJoint(seen, job.key)] : [];
  const byKey = operation === undefined ? new Map() : jointsOf(seen, operation);
  const joints = operation === undefined ? own : [...byKey.values()];
  const ownTorque = own[0] === undefined ? null : torqueLine(own[0]);
  const stage = seen.plan.stages[operation?.stage ?? job.due];
  const asked = asksOn(seen.car).filter(({ of }) => of === job.key);
  return {
    id: job.id,
    car: {
      id: seen.car.id,
      chassis: seen.car.chassis,
      colour: seen.car.colour,
      loose: view.head.counts.ends,
      crew: view.head.crew,
    },
    kind: `${JOB_WORDS[job.kind]} ${job.key} in ${stage?.name ?? ''}`,
    name: nameOf(seen, job),
    state: job.state,
    meta: metaOf(seen, job, row),
    leftAs: job.state === 'paused' ? (seen.car.operations[job.key]?.leftAs ?? null) : null,
    row,
    desk: view.desk,
    places: view.places,
    version: view.version,
    again: view.again,
    asksAbout: operation === undefined ? null : job.key,
    cautions: (operation?.cautions ?? []).flatMap((key) => {
      const caution = seen.plan.document.cautions?.[key];
      return caution === undefined ? [] : [{ hazard: caution.hazard, text: caution.text }];
    }),
    steps: entry?.steps ?? [],
    body:
      operation === undefined
        ? ownTorque === null
          ? []
          : [
              {
                id: null,
                sign: row.sign,
                name: `${seen.words.thing(job.key)}: ${JOB_WORDS[job.kind].toLowerCase()}`,
                isDone: false,
                acts: [],
                href: row.sheet,
                torque: ownTorque,
              },
            ]
        : row.body.map((line, index) => {
            const meant = operation.body[index];
            return { ...line, torque: meant === undefined ? null : torqueOf(byKey, meant) };
          }),
    hardware: kitLines(seen, joints, operation, reach),
    kitHref: operation === undefined ? null : kitHref(seen.car, job.key),
    lacks,
    tools: toolLines(seen, joints),
    asks: asked.map((each) => askedLine(seen, each)),
  };
};

const rowOf = (view: CarView, job: string): RowView | null => {
  const id = view.places[`job:${job}`]?.at(-1);
  const rows = [
    ...view.ends.flatMap((group) => group.rows),
    ...view.work.flatMap((group) => group.rows),
    ...view.options,
    ...view.parts,
  ];
  return rows.find((row) => row.id === id) ?? null;
};

/** The name without its key, which stands above it. */
const nameOf = ({ nameOf: named, car }: Seen, { key }: Job): string =>
  named(key) ?? car.findings[key]?.text ?? car.stopgaps[key]?.what ?? car.changes[key]?.reason ?? key;

const metaOf = (seen: Seen, job: Job, row: RowView): readonly string[] => {
  const facts = job.kind === 'operation' ? operationFacts(seen, job.key) : row.facts;
  return [
    ...facts.map(([label, value]) => `${label} ${value}`),
    ...(row.due === null ? [] : [`Due by ${row.due.text}`]),
  ];
};

export const askedLine = ({ car, tag, when, words }: Seen, { of, text, by, at, answer }: Ask): AskedLine => ({
  id: `${car.id} ${of} ${at}`,
  href: jobHref(car, `operation:${of}:${String(car.operations[of]?.run ?? 1)}`),
  about: words.thing(of),
  chassis: car.chassis,
  text,
  by: tag(by, at).name,
  when: when(at),
  answer:
    answer === null ? null : { text: answer.text, by: tag(answer.by, answer.at).name, when: when(answer.at) },
});

export const jobHref = (car: Pick<Car, 'id'>, job: string): string =>
  `/my-work?car=${encodeURIComponent(car.id)}&job=${encodeURIComponent(job)}`;

/** Where the box of an operation is filled. */
export const kitHref = (car: Pick<Car, 'id'>, operation: string): string =>
  `/kits/${encodeURIComponent(car.id)}/${encodeURIComponent(operation)}`;

/** Its place on the car's page. */
export const onCarPage = (car: Pick<Car, 'id'>, key: string): string =>
  `/cars/${encodeURIComponent(car.id)}#${anchorOf('operation', key)}`;
