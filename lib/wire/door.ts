/** What `POST /api/commands` takes and answers: the one door of every act, from every screen (D6). */
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Command } from '@/lib/domain/commands';

export interface DoorRequest {
  /** `command.id` is a UUID made on the device before the first send. */
  readonly command: Command;
  /** Counts up on each device; a lower one than before is out of order (D1). */
  readonly sequence?: number;
  /** Who signs; the PIN is checked and never stored (D4). */
  readonly signer?: { readonly person: string; readonly pin: string };
}

export interface SaidRefusal {
  readonly refusal: Refusal;
  /** What is wrong and what clears it. */
  readonly sentence: string;
}

/** `already`: this very command had its answer before, and this is it. */
export type DoorAnswer =
  | {
      readonly outcome: 'accepted';
      readonly already: boolean;
      readonly car: string | null;
      /** The stream's version after it. */
      readonly version: number;
    }
  | { readonly outcome: 'refused'; readonly already: boolean; readonly refusals: readonly SaidRefusal[] }
  | { readonly outcome: 'conflict'; readonly says: string }
  | {
      readonly outcome: 'bad-input';
      readonly fields: readonly { readonly field: string; readonly says: string }[];
    }
  | { readonly outcome: 'wrong-pin'; readonly says: string; readonly waitSeconds: number | null }
  | { readonly outcome: 'not-allowed'; readonly says: string }
  | { readonly outcome: 'not-signed-in'; readonly says: string }
  | { readonly outcome: 'busy'; readonly says: string };

export const DOOR_STATUS: Readonly<Record<DoorAnswer['outcome'], number>> = {
  accepted: 200,
  refused: 409,
  conflict: 422,
  'bad-input': 400,
  'wrong-pin': 403,
  'not-allowed': 403,
  'not-signed-in': 401,
  busy: 503,
};
