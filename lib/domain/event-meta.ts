/** What every event carries, and what a signature is for. */
import type { Instant, PersonId } from './base/vocabulary';

/** Who, when, by which command: the same in every event of one command. */
export interface Meta {
  readonly command: string;
  readonly by: PersonId;
  /** judgedAt: the time that counts. */
  readonly at: Instant;
  readonly doneAt: Instant;
  readonly receivedAt: Instant;
  readonly clockDoubted: boolean;
  readonly device: string | null;
  readonly batch: string | null;
}

/** What a signature is for; the sign-off's own event carries it. */
export interface Signed {
  readonly act: string;
  readonly subject: string;
  readonly number: number;
}
