import { RAIL_CODES } from '@/lib/wire/views/board';
import type { RailCode } from '@/lib/wire/views/board';

/** Like signs beside each other; `folded` ones are drawn once, with their number. */
export interface RailRun {
  readonly code: RailCode;
  readonly count: number;
  readonly folded: boolean;
}

/** Three rows of eight: what a cell holds without growing taller than its plate. */
const MOST_SLOTS = 24;
/** A folded run is a sign and up to three figures. */
const FOLDED_SLOTS = 3;

/** Never folded: each of these is something that someone must go to. */
const ALONE: ReadonlySet<RailCode> = new Set<RailCode>(['d', 'D', 'O', 'x', 'U']);

/**
 * A rail shows each head while they fit. Where a stage has more, the longest runs of like heads become one head and
 * its number, one after another, until the rest fits; so the few that differ are never lost among the many.
 */
export const railRuns = (rail: string, most = MOST_SLOTS): readonly RailRun[] => {
  const runs = rail
    .split(' ')
    .filter((text) => text !== '')
    .flatMap((text) => {
      const code = text.slice(-1);
      return isCode(code) ? [{ code, count: Number(text.slice(0, -1)), folded: false }] : [];
    });
  const slots = (): number =>
    runs.reduce((sum, { count, folded }) => sum + (folded ? FOLDED_SLOTS : count), 0);
  while (slots() > most) {
    const longest = runs
      .filter(({ code, count, folded }) => !folded && count > FOLDED_SLOTS && !ALONE.has(code))
      .sort((a, b) => b.count - a.count)[0];
    if (longest === undefined) break;
    longest.folded = true;
  }
  return runs;
};

const isCode = (text: string): text is RailCode => Object.hasOwn(RAIL_CODES, text);
