/** The tray of the board: what may begin now, and what of it lacks parts, on all cars. */
import 'server-only';
import type { Job } from '@/lib/domain/assess';
import type { Row } from './row';
import { missingWords, partsNow } from '@/lib/server/queries/kits/supplies';
import type { Supplies } from '@/lib/server/queries/kits/supplies';
import { JOB_WORDS } from '@/lib/server/queries/my-work/opened';
import type { ReadyTray, TrayJob, TrayList } from '@/lib/wire/views/board';
import { durationWords } from '@/lib/wire/views/duration';
import { namesOf } from '@/lib/wire/views/names';
import { anchorOf } from '@/lib/wire/views/said-line';

/** More than these nobody reads in a tray; the rest stands on the cars' pages. */
const MOST = 12;

/** What the gate before a car asks for comes first, then what may be done ahead; of each car one, then the next of each. */
export const trayOf = (rows: readonly Row[], supplies: Supplies): ReadyTray => {
  const jobs = rows
    .flatMap((row) => {
      const ready = row.jobs.filter(({ state }) => state === 'ready');
      const sorted = ready.toSorted((a, b) => aheadOf(row, a) - aheadOf(row, b));
      return sorted.map((job, index) => ({ row, job, index }));
    })
    .toSorted((a, b) => aheadOf(a.row, a.job) - aheadOf(b.row, b.job) || a.index - b.index)
    .map(({ row, job }) => trayJob(row, job, supplies));
  return {
    ready: listOf(jobs.filter(({ lacks }) => lacks === '')),
    butForParts: listOf(jobs.filter(({ lacks }) => lacks !== '')),
  };
};

const aheadOf = ({ car }: Row, { due }: Job): number => Math.max(0, due - car.stage);

const listOf = (jobs: readonly TrayJob[]): TrayList => ({
  jobs: jobs.slice(0, MOST),
  more: Math.max(0, jobs.length - MOST),
});

const trayJob = ({ plan, car, of }: Row, { id, kind, key }: Job, supplies: Supplies): TrayJob => {
  const minutes = kind === 'operation' ? (plan.operations.get(key)?.minutes ?? 0) : 0;
  const name = namesOf(plan.document)(key) ?? of.stopgaps[key]?.what ?? key;
  return {
    id: `${car.id} ${id}`,
    href: hrefOf(car.id, kind, key),
    chassis: car.chassis,
    colour: car.colour,
    key,
    name: kind === 'operation' ? name : `${JOB_WORDS[kind]}: ${name}`,
    takes: minutes === 0 ? '' : durationWords(minutes),
    lacks: missingWords(supplies, plan, partsNow(supplies, plan, of, { kind, key })),
  };
};

/** A joint has a sheet of its own; all other work is a line of the car's page. */
const hrefOf = (car: string, kind: Job['kind'], key: string): string => {
  const page = `/cars/${encodeURIComponent(car)}`;
  switch (kind) {
    case 'restore':
    case 'renew':
    case 'retorque':
    case 'recheck':
    case 'verify':
      return `${page}/joints/${encodeURIComponent(key)}`;
    case 'decide':
      return `${page}#${anchorOf('finding', key)}`;
    default:
      return `${page}#${anchorOf(kind, key)}`;
  }
};
