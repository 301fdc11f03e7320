/** Waits: paint, sealer, fire watch. They count calendar time from the finish of the operation. */
import type { Instant } from '@/lib/domain/base/vocabulary';
import type { OperationRow } from './rows';

/** When the wait is over by the time it was done and by the server's own time; both must have passed (D1). */
export type WaitEnd = 'over' | 'not finished' | { readonly judged: Instant; readonly received: Instant };

export const waitEnd = (row: OperationRow | undefined): WaitEnd => {
  if (row?.status !== 'finished' || row.finishedAt === null || row.finishedReceivedAt === null)
    return 'not finished';
  if (row.waitMs === 0 || row.waitEnded) return 'over';
  return { judged: later(row.finishedAt, row.waitMs), received: later(row.finishedReceivedAt, row.waitMs) };
};

const later = (at: Instant, milliseconds: number): Instant =>
  new Date(Date.parse(at) + milliseconds).toISOString();
