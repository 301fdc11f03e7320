/** Where a repeated thing stands on the car, and which positions a reference from one thing to another means. */
import type { Repeat } from './document';
import type { Reference } from './notation';

const SIDES: readonly string[] = ['L', 'R'];
const CORNERS: readonly string[] = ['FL', 'FR', 'RL', 'RR'];
const ONCE: readonly (string | null)[] = [null];

/** `null` stands for a thing that exists once and has no position in its name. */
export const positionsOf = (repeat: Repeat | undefined): readonly (string | null)[] => {
  if (repeat === undefined) return ONCE;
  if (repeat === 'sides') return SIDES;
  if (repeat === 'corners') return CORNERS;
  return Array.from({ length: repeat }, (_, index) => String(index + 1));
};

export const stateKey = (key: string, position: string | null): string =>
  position === null ? key : `${key}@${position}`;

/** The plan key of a state key: `J-110@L` → `J-110`. */
export const planKey = (key: string): string => {
  const at = key.indexOf('@');
  return at < 0 ? key : key.slice(0, at);
};

/**
 * The positions of `target` that a reference from a thing standing at `from` means (decision D15), or null
 * where the two axes don't settle it and the plan must write `key@position` or `key@*`.
 */
export const positionsMeant = (
  reference: Reference,
  target: Repeat | undefined,
  referrer: Repeat | undefined,
  from: string | null,
): readonly (string | null)[] | null => {
  const all = positionsOf(target);
  if (reference.position === '*') return all;
  if (reference.position !== null) return all.includes(reference.position) ? [reference.position] : null;
  if (target === undefined || referrer === undefined || from === null) return all;
  if (target === referrer) return [from];
  if (referrer === 'corners' && target === 'sides') return [from.slice(-1)];
  if (referrer === 'sides' && target === 'corners') return CORNERS.filter((corner) => corner.endsWith(from));
  return null;
};
