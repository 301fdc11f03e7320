/** Plays a day's lines against one plan, as the shop's server would have answered them. */
import { assess } from '@/lib/domain/assess';
import type { Assessment } from '@/lib/domain/assess';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CarId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Event } from '@/lib/domain/events';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { factsAt, play } from '@/lib/domain/play';
import type { Stage } from '@/lib/domain/play';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import type { Expectation, ReadLine } from '@/lib/wire/read-lines';

export type Verdict =
  | { readonly kind: 'accepted'; readonly events: readonly Event[] }
  | { readonly kind: 'refused'; readonly refusals: readonly Refusal[] }
  /** Its id belongs to another command, given on line `first`. */
  | { readonly kind: 'id-used'; readonly first: number };

export interface PlayedLine {
  readonly read: ReadLine;
  readonly verdict: Verdict;
  /** The line that gave the very same command before; this one got that one's answer and did nothing. */
  readonly twinOf: number | null;
  readonly isAsExpected: boolean;
}

export interface AssessedCar {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly assessment: Assessment;
}

export interface PlayedDay {
  readonly lines: readonly PlayedLine[];
  /** As they stand at the time of the last line, in the order they were begun. */
  readonly cars: readonly AssessedCar[];
  /** All of it, after the last line. */
  readonly world: World;
}

export const ID_USED = 'id-used-for-other-command';

export const codesOf = (verdict: Verdict): readonly string[] => {
  switch (verdict.kind) {
    case 'accepted':
      return [];
    case 'refused':
      return [...new Set(verdict.refusals.map(({ code }) => code))];
    case 'id-used':
      return [ID_USED];
  }
};

export const playLines = (lines: readonly ReadLine[], stage: Stage): PlayedDay => {
  let world = EMPTY_WORLD;
  const first = new Map<string, PlayedLine>();
  const played: PlayedLine[] = [];
  for (const read of lines) {
    const { id } = read.line.command;
    const earlier = first.get(id);
    if (earlier !== undefined) {
      played.push(again(read, earlier));
      continue;
    }
    const result = play(world, stage, read.line);
    world = result.world;
    const verdict: Verdict = result.verdict.ok
      ? { kind: 'accepted', events: result.verdict.value }
      : { kind: 'refused', refusals: result.verdict.error };
    const line = judged(read, verdict, null);
    first.set(id, line);
    played.push(line);
  }
  return { lines: played, cars: assessedCars(world, stage, lines.at(-1)), world };
};

/** The server answers a command that it knows with the stored answer (design: the one write path). */
const again = (read: ReadLine, earlier: PlayedLine): PlayedLine =>
  read.body === earlier.read.body
    ? judged(read, earlier.verdict, earlier.read.number)
    : judged(read, { kind: 'id-used', first: earlier.read.number }, null);

const judged = (read: ReadLine, verdict: Verdict, twinOf: number | null): PlayedLine => ({
  read,
  verdict,
  twinOf,
  isAsExpected: isAsExpected(read.expect, verdict),
});

const isAsExpected = (expect: Expectation, verdict: Verdict): boolean => {
  if (expect === 'yes') return verdict.kind === 'accepted';
  if (expect === 'no') return verdict.kind !== 'accepted';
  const codes = codesOf(verdict);
  return codes.length === new Set(expect).size && codes.every((code) => expect.includes(code));
};

const assessedCars = (world: World, stage: Stage, last: ReadLine | undefined): readonly AssessedCar[] => {
  if (last === undefined) return [];
  const { line } = last;
  const facts = factsAt(world, stage, { ...line, command: { ...line.command, doneAt: line.now } });
  return Object.values(world.cars).flatMap((car): readonly AssessedCar[] => {
    const plan = planOf(facts, car);
    return plan === null ? [] : [{ car, plan, assessment: assess(plan, car, facts) }];
  });
};

/** The car a line is about; null where it is about the shop. */
export const carOf = ({ read }: PlayedLine): CarId | null => {
  const { claim } = read.line.command;
  return 'car' in claim ? claim.car : null;
};
