/** What is looked up about an operation: who is on it, since when, how many it takes, how long it was planned for. */
import type { Job } from '@/lib/domain/assess';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { RowView } from '@/lib/wire/views/car';
import type { Seen } from './seen';

/** Who is on it; else whom it was given to. */
export const operationPeople = (seen: Seen, key: StateKey, job: Job | undefined): RowView['who'] => {
  const row = seen.car.operations[key];
  const isBegun = row?.status === 'running' || row?.status === 'paused';
  const present = isBegun ? (row.present.length > 0 ? row.present : row.crew) : [];
  return (present.length > 0 ? present : (job?.people ?? [])).map((id) => seen.tag(id));
};

export const operationWord = (job: Job | undefined): string => {
  switch (job?.state) {
    case 'running':
      return 'Go on';
    case 'paused':
      return 'Resume';
    case 'ready':
      return 'Start';
    default:
      return 'See why';
  }
};

export const operationFacts = (seen: Seen, key: StateKey): RowView['facts'] => {
  const operation = seen.plan.operations.get(key);
  if (operation === undefined) return [];
  const row = seen.car.operations[key];
  const isBegun = row?.status === 'running' || row?.status === 'paused';
  const { equipment, waitFor } = seen.plan.document.operations?.[operation.key] ?? {};
  const wait = operation.waitMs === 0 ? null : hours(operation.waitMs);
  const facts: (readonly [string, string] | null)[] = [
    isBegun && row.startedAt !== null ? ['Begun', seen.when(row.startedAt)] : null,
    row !== undefined && row.run > 1
      ? ['Run', `${String(row.run)}${row.why === null ? '' : `: ${row.why}`}`]
      : null,
    operation.minutes > 0 ? ['Planned', minutes(operation.minutes)] : null,
    operation.crew > 1 ? ['Takes', `${String(operation.crew)} people`] : null,
    operation.who === null ? null : ['Asks for', operation.who],
    equipment === undefined ? null : ['With', equipment.join(', ')],
    wait === null ? null : ['Then waits', `${wait}${waitFor === undefined ? '' : ` for ${waitFor}`}`],
  ];
  return facts.filter((fact) => fact !== null);
};

const minutes = (count: number): string => {
  const whole = Math.floor(count / 60);
  const rest = count % 60;
  return whole === 0
    ? `${String(rest)} min`
    : rest === 0
      ? `${String(whole)} h`
      : `${String(whole)} h ${String(rest)} min`;
};

const hours = (milliseconds: number): string => minutes(Math.round(milliseconds / 60_000));
