/** The order in which a joint's fasteners are tightened. Common practice, no source. */
import type { Pattern } from './document';

const count = (length: number): number[] => Array.from({ length }, (_, index) => index + 1);

/** From the middle of a row outwards, alternating: 6 → 3 4 2 5 1 6. */
const fromCentre = (length: number): number[] => {
  const middle = (length + 1) / 2;
  return count(length).sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b);
};

/** Round a circle, always to the place farthest from the last: 4 → 1 3 2 4, 5 → 1 3 5 2 4, 8 → 1 5 3 7 2 6 4 8. */
const opposed = (length: number): number[] => {
  if (length % 2 === 1) {
    const step = (length - 1) / 2;
    return count(length).map((_, index) => ((index * step) % length) + 1);
  }
  const half = length / 2;
  return opposedPairs(half).flatMap((start) => [start, start + half]);
};

const opposedPairs = (half: number): number[] => {
  if (half <= 2) return count(half);
  const middle = Math.floor(half / 2) + 1;
  const rest = count(half).filter((each) => each !== 1 && each !== middle);
  return [1, middle, ...rest];
};

/** Fastener numbers in tightening order; an absent pattern is the numbers' own order. */
export const tighteningOrder = (
  pattern: Pattern | readonly number[] | undefined,
  fasteners: number,
): readonly number[] => {
  if (pattern === undefined || pattern === 'line' || pattern === 'circle') return count(fasteners);
  if (typeof pattern !== 'string') return pattern;
  return pattern === 'cross' || pattern === 'star' ? opposed(fasteners) : fromCentre(fasteners);
};
