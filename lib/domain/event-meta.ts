/** What every event carries, and what a signature is for. */
import type { Instant, Key, PersonId, Role, ToolId } from './base/vocabulary';
import type { Calibration } from './torque/tool';

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
  /** As the signer and the tool stood then. Absent in logs from before it was kept; it is never made up for them. */
  readonly as?: SignedAs;
}

export interface SignedAs {
  /** What the signer was called. Absent in logs from before people could be renamed: the shop’s books know it. */
  readonly name?: string;
  readonly roles: readonly Role[];
  /** Those that held on the day that counts. */
  readonly qualifications: readonly Key[];
  readonly tool: ToolId | null;
  readonly calibration: Calibration | null;
}

export interface PhotoAdded {
  readonly type: 'photo-added';
  readonly of: string;
  readonly slot: string;
  /** SHA-256 of what the camera gave. */
  readonly hash: string;
  /** SHA-256 of the copy that the shop keeps; absent where the shop's photographs were not asked. */
  readonly copy?: string;
}
