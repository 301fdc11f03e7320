/**
 * One person, one tool, one sitting: what has been done and read so far. It is kept on the device as a draft, so that
 * it is plain data, and nothing of it counts until it is signed.
 */
import type { Unit } from '@/lib/domain/base/units';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { CarClaim } from '@/lib/domain/commands';

export interface Sitting {
  /** By ask: the value as typed, or `done`. */
  readonly given: Readonly<Record<string, string>>;
  /** What stands in the entry box. */
  readonly typed: string;
  /** The ask that is being corrected; null = the next that is open. */
  readonly correcting: string | null;
  /** The unit that the tool shows, where it is not the tool's own. */
  readonly unit: Unit | null;
  /** Somebody was asked which unit the tool shows, and said. */
  readonly unitConfirmed: boolean;
  /** Hardware that went in otherwise than the plan says by itself. */
  readonly hardware: readonly FittedClaim[];
  /** Readings over the window: each is a warning of its own, sent the moment it was entered. */
  readonly over: readonly OverReading[];
  /** A signing that has had no answer yet. */
  readonly pending: Pending | null;
  /** The last refused signing: the next one says that it tries it again. */
  readonly retryOf: string | null;
}

export interface OverReading {
  readonly ask: string;
  readonly fastener: number;
  readonly reading: string;
  readonly unit: Unit;
  /** The warning, with its id and time: made before it is first sent, and the same however often it is sent. */
  readonly id: string;
  readonly doneAt: string;
  readonly claim: CarClaim;
  readonly sent: boolean;
}

export interface Pending {
  readonly id: string;
  readonly doneAt: string;
  readonly claim: CarClaim;
  readonly by: string;
}

export const EMPTY_SITTING: Sitting = {
  given: {},
  typed: '',
  correcting: null,
  unit: null,
  unitConfirmed: false,
  hardware: [],
  over: [],
  pending: null,
  retryOf: null,
};

/** Is there anything that would be lost? */
export const isBegun = (sitting: Sitting): boolean =>
  sitting.typed !== '' || Object.keys(sitting.given).length > 0 || sitting.over.length > 0;

/** Is there something that must not be thrown away: a warning not sent, a signing without an answer? */
export const isOwed = ({ over, pending }: Sitting): boolean =>
  pending !== null || over.some(({ sent }) => !sent);

/** `2 of 4 nuts`: how far it has come, in words. */
export const countOf = (sitting: Sitting, word: { readonly one: string; readonly many: string }): string => {
  const fasteners = new Set(
    Object.keys(sitting.given).flatMap((id) => {
      const [kind, ...rest] = id.split(':');
      return kind === 'step' || kind === 'setting' ? [] : [rest.at(-1)];
    }),
  );
  const steps = Object.keys(sitting.given).filter((id) => id.startsWith('step:')).length;
  if (steps > 0) return steps === 1 ? '1 step' : `${String(steps)} steps`;
  if (fasteners.size === 0) return 'a setting';
  return fasteners.size === 1 ? `1 ${word.one}` : `${String(fasteners.size)} ${word.many}`;
};
