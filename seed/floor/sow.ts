/** Gives lines to whoever runs them: cars side by side, each car's own lines and everything that depends in order. */
import { STARTS_CLOCK } from '@/lib/domain/clocks';
import type { ClaimType } from '@/lib/domain/commands';
import type { GivenLine } from '@/seed/driver';

/** Cars make room for each other: these are heard in the order of time across all of them. */
const MOVES: ReadonlySet<ClaimType> = new Set(['start-car', 'advance-car', 'send-back', 'deliver-car']);
/** These speak of what came before and of nothing that comes later, doubts and counts: everything earlier must be there. */
const LOOKS_BACK: ReadonlySet<ClaimType> = new Set([
  'suspect-tool',
  'record-calibration',
  'quarantine-lot',
  'count-stock',
  'receive-order',
  'keep-donor-hardware',
]);

/** These let a person's clock go: whoever begins elsewhere waits for all of them. */
const STOPS: ReadonlySet<ClaimType> = new Set(['pause-operation', 'finish-operation', 'take-over-operation']);

const SHOP = 'shop';

/** Runs all of them. After the first that fails none is begun any more, and that failure is thrown. */
export const sow = async (
  lines: readonly GivenLine[],
  run: (line: GivenLine) => Promise<void>,
): Promise<void> => {
  const last = new Map<string, Promise<void>>();
  const lastOf = (stream: string): Promise<void> => last.get(stream) ?? Promise.resolve();
  let lastMove = Promise.resolve();
  let stopped: Promise<unknown> = Promise.resolve();
  let failed = false;
  const runAfter = async (before: readonly Promise<unknown>[], line: GivenLine): Promise<void> => {
    await Promise.all(before);
    if (failed) return;
    try {
      await run(line);
    } catch (error) {
      failed = true;
      throw error;
    }
  };
  for (const line of lines) {
    const { claim } = line.command;
    const stream = 'car' in claim ? claim.car : SHOP;
    const isMove = MOVES.has(claim.type);
    const before = LOOKS_BACK.has(claim.type)
      ? [...last.values()]
      : [
          lastOf(stream),
          lastOf(SHOP),
          ...(isMove ? [lastMove] : []),
          ...(STARTS_CLOCK.has(claim.type) ? [stopped] : []),
        ];
    const done = runAfter(before, line);
    last.set(stream, done);
    if (isMove) lastMove = done;
    if (STOPS.has(claim.type)) stopped = Promise.all([stopped, done]);
  }
  await Promise.all(last.values());
};
