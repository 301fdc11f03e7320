/** A command as the server has it: what is claimed, and what only the server can say about it. */
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { Command } from '@/lib/domain/commands';

export interface Given {
  readonly command: Command;
  /** Who signs: the person whose PIN was given, else the one who is signed in (D4). */
  readonly actor: PersonId;
  /** Whose session it came through, where that is somebody else. */
  readonly present: PersonId | null;
  readonly device: string | null;
  /** When the device was last heard of; null = believed (D1). */
  readonly lastContact: Instant | null;
  readonly isInOrder: boolean;
  /** The server's clock, as an argument, so that a demo's history has its own. */
  readonly now: Instant;
}

/** The answer to a command, final for its id. */
export type RunAnswer =
  | {
      readonly outcome: 'accepted';
      readonly already: boolean;
      readonly car: string | null;
      readonly version: number;
    }
  | { readonly outcome: 'refused'; readonly already: boolean; readonly refusals: readonly Refusal[] }
  /** The id was used before, for something else. */
  | { readonly outcome: 'conflict' };
