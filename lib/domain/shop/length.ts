/**
 * How long a bolt must be: grip, washers, nut and what must stand out behind it; the next length in the catalogue; and
 * whether its thread reaches far enough, so that the nut closes on the joint and not on the shank. Exact, and it says how it
 * came to its answer. A suggestion until a lead has taken it into the plan.
 */
import {
  ZERO,
  add,
  compare,
  divide,
  exact,
  isAtLeast,
  multiply,
  subtract,
  toNumber,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Thread } from '@/lib/domain/torque/strength';
import { mayBeShorterBy, threadLength, transitionLength } from './fastener-table';
import type { Spread } from './fastener-table';

/** What a bolt goes through, in the unit of its thread. */
export interface Stack {
  readonly thread: Thread;
  /** What is clamped, without washers. */
  readonly grip: Exact;
  /** Under head and nut together. */
  readonly washers: readonly Spread[];
  readonly nut: Spread;
}

/** Where published sources differ, the shop decides. */
export interface LengthPolicy {
  /** Washers as thick as they are called, or as thick as they may be; nuts always as high as they may be. */
  readonly washers: 'basic' | 'max';
  /** Threads that must stand out of the nut: FAA AC 43.13-1B 7-39 asks for one, common workshop practice for two. */
  readonly threads: number;
  /** The most that may; null = no limit. An aircraft builders' note has 3. */
  readonly mostThreads: number | null;
  /** AC 43.13-1B 7-37: three; another maker allows four. */
  readonly mostWashers: number;
  /** The bolt may be as short as its tolerance lets it (inch only). */
  readonly madeShort: boolean;
}

export const USUAL_LENGTH: LengthPolicy = {
  washers: 'max',
  threads: 2,
  mostThreads: null,
  mostWashers: 3,
  madeShort: false,
};

export interface Term {
  readonly what: 'grip' | 'washers' | 'nut' | 'threads';
  readonly count: number;
  readonly length: Exact;
}

export interface LengthNeeded {
  readonly unit: Thread['unit'];
  readonly terms: readonly Term[];
  readonly length: Exact;
}

export interface JudgedLength {
  readonly length: Exact;
  /** Threads that stand out behind the nut, exact; below zero where it does not come through. */
  readonly threads: Exact;
  /** The plain part under the head; zero where it is threaded to the head. */
  readonly shank: Exact;
  /** How far the shank may reach: grip and washers, these as thin as they may be. */
  readonly shankRoom: Exact;
  readonly refusals: readonly LengthRefusal[];
}

export type LengthRefusal =
  | {
      readonly code: 'bolt-too-short';
      readonly length: Exact;
      readonly needed: Exact;
      readonly unit: Thread['unit'];
    }
  | {
      readonly code: 'no-such-length';
      readonly needed: Exact;
      readonly longest: Exact | null;
      readonly unit: Thread['unit'];
    }
  | {
      readonly code: 'nut-reaches-shank';
      readonly length: Exact;
      readonly shank: Exact;
      readonly room: Exact;
      readonly unit: Thread['unit'];
    }
  | {
      readonly code: 'stands-out-too-far';
      readonly length: Exact;
      readonly threads: Exact;
      readonly most: number;
      readonly unit: Thread['unit'];
    }
  | { readonly code: 'too-many-washers'; readonly washers: number; readonly most: number };

export interface LengthAnswer {
  readonly needed: LengthNeeded;
  /** The shortest of the catalogue that is long enough, whatever else stands against it. */
  readonly pick: JudgedLength | null;
  readonly refusals: readonly LengthRefusal[];
}

const sum = (lengths: readonly Exact[]): Exact => lengths.reduce(add, ZERO);

/** Each term of the length that a stack asks for. */
export const neededLength = (stack: Stack, policy: LengthPolicy = USUAL_LENGTH): LengthNeeded => {
  const { thread, grip, washers, nut } = stack;
  const terms: readonly Term[] = [
    { what: 'grip', count: 1, length: grip },
    { what: 'washers', count: washers.length, length: sum(washers.map((each) => each[policy.washers])) },
    { what: 'nut', count: 1, length: nut.max },
    { what: 'threads', count: policy.threads, length: multiply(thread.pitch, exact(policy.threads)) },
  ];
  return { unit: thread.unit, terms, length: sum(terms.map((term) => term.length)) };
};

/** The plain part of a hex bolt of this length. Zero for one that is threaded to its head. */
export const shankOf = ({ unit, diameter }: Thread, length: Exact): Exact => {
  const thread = threadLength(unit, diameter, length);
  const transition = unit === 'in' ? transitionLength(diameter) : ZERO;
  const isThreadedToHead = compare(length, add(thread, transition ?? ZERO)) < 0;
  return isThreadedToHead ? ZERO : subtract(length, thread);
};

interface Bolt {
  readonly length: Exact;
  /** A screw by its nature; else as the standard has it for its length. */
  readonly threadedToHead?: boolean;
}

/** What stands against a bolt of this length in this stack. */
export const judgeLength = (stack: Stack, bolt: Bolt, policy: LengthPolicy = USUAL_LENGTH): JudgedLength => {
  const { thread, grip, washers } = stack;
  const { unit } = thread;
  const { length } = bolt;
  const needed = neededLength(stack, policy);
  const least = policy.madeShort ? subtract(length, shortfall(thread, length)) : length;
  const upToNut = subtract(needed.length, multiply(thread.pitch, exact(policy.threads)));
  const threads = divide(subtract(least, upToNut), thread.pitch) ?? ZERO;
  const shank = bolt.threadedToHead === true ? ZERO : shankOf(thread, length);
  const shankRoom = add(grip, sum(washers.map(({ min }) => min)));
  const refusals: LengthRefusal[] = [];
  if (compare(least, needed.length) < 0)
    refusals.push({ code: 'bolt-too-short', length, needed: needed.length, unit });
  if (compare(shank, shankRoom) > 0)
    refusals.push({ code: 'nut-reaches-shank', length, shank, room: shankRoom, unit });
  if (policy.mostThreads !== null && compare(threads, exact(policy.mostThreads)) > 0)
    refusals.push({ code: 'stands-out-too-far', length, threads, most: policy.mostThreads, unit });
  if (washers.length > policy.mostWashers)
    refusals.push({ code: 'too-many-washers', washers: washers.length, most: policy.mostWashers });
  return { length, threads, shank, shankRoom, refusals };
};

const shortfall = ({ unit, diameter }: Thread, length: Exact): Exact =>
  (unit === 'in' ? mayBeShorterBy(diameter, length) : null) ?? ZERO;

/**
 * The next length that the catalogue has. No step is taken for granted: what is not there can't be bought.
 *
 * @example 3/8-16, grip 1, two N washers, hex nut, quarter-inch steps // 1-3/4
 */
export const pickLength = (
  stack: Stack,
  lengths: readonly Exact[],
  policy: LengthPolicy = USUAL_LENGTH,
): LengthAnswer => {
  const needed = neededLength(stack, policy);
  const rising = [...lengths].sort(compare);
  const isLongEnough = (length: Exact): boolean =>
    isAtLeast(policy.madeShort ? subtract(length, shortfall(stack.thread, length)) : length, needed.length);
  const length = rising.find(isLongEnough);
  if (length !== undefined) {
    const pick = judgeLength(stack, { length }, policy);
    return { needed, pick, refusals: pick.refusals };
  }
  const refusal: LengthRefusal = {
    code: 'no-such-length',
    needed: needed.length,
    longest: rising.at(-1) ?? null,
    unit: needed.unit,
  };
  return { needed, pick: null, refusals: [refusal] };
};

/** Whole threads that stand out, for people. */
export const wholeThreads = ({ threads }: Pick<JudgedLength, 'threads'>): number =>
  Math.floor(toNumber(threads));
