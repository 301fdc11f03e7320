/**
 * The rulebook as a record, so that a property can be asked of these rules or of rules with a planted fault (D39).
 * Also what every property is run with: its seed, and how often.
 */
import type { Parameters } from 'fast-check';
import { assess } from '@/lib/domain/assess';
import { fromRows, rowDelta, toRows } from '@/lib/domain/car/codec';
import { decide } from '@/lib/domain/decide';
import { evolve } from '@/lib/domain/evolve';
import { belowLevel } from '@/lib/domain/unmet';

export interface Rules {
  readonly decide: typeof decide;
  readonly evolve: typeof evolve;
  readonly assess: typeof assess;
  readonly belowLevel: typeof belowLevel;
  readonly toRows: typeof toRows;
  readonly fromRows: typeof fromRows;
  readonly rowDelta: typeof rowDelta;
}

export const RULES: Rules = { decide, evolve, assess, belowLevel, toRows, fromRows, rowDelta };

const DEFAULT_SEED = 541954;

/** The same seed gives the same runs; another one is given by the environment variable SLIPMARK_SEED. */
const seed = (): number => {
  const given = Number(process.env['SLIPMARK_SEED'] ?? DEFAULT_SEED);
  return Number.isSafeInteger(given) ? given : DEFAULT_SEED;
};

/** A failing run says its seed, its path and the smallest example. */
export const runs = (numRuns: number): Parameters<unknown> => ({ seed: seed(), numRuns });

/** For planted faults: always the same runs; that one turns red is enough, the smallest example is not asked for. */
export const untilRed = (numRuns: number): Parameters<unknown> => ({
  seed: DEFAULT_SEED,
  numRuns,
  endOnFailure: true,
});
