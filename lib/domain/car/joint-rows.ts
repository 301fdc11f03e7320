/** A joint as a row: its marks, its doubts, its hardware. What they mean is asked of `joint.ts`. */
import type {
  DoubtCause,
  Instant,
  Key,
  Level,
  LotId,
  MarkLevel,
  PersonId,
  Remedy,
  StateKey,
  ToolId,
  VerifyMethod,
} from '@/lib/domain/base/vocabulary';
import type { Unit } from '@/lib/domain/base/units';

/** Which run of which operation an act belongs to. */
export interface RunRef {
  readonly operation: StateKey;
  readonly run: number;
}

export interface Doubt {
  readonly cause: DoubtCause;
  readonly remedy: Remedy;
  readonly fasteners: readonly number[] | null;
  readonly because: string;
  readonly at: Instant;
}

/** One signed step of a cycle. Struck marks stay, readable. */
export interface Mark {
  readonly level: MarkLevel;
  readonly signature: string;
  readonly by: PersonId;
  /** Everyone who was on the work then: none of them may verify. */
  readonly crew: readonly PersonId[];
  readonly at: Instant;
  readonly run: RunRef | null;
  readonly tool: ToolId | null;
  readonly adapter: string | null;
  readonly method: VerifyMethod | null;
  /** What each fastener got, in the joint's unit, by fastener number; exact text (`num/den`). */
  readonly delivered: Readonly<Record<string, string>> | null;
  /** The least and the most of them: what a doubt about the tool is judged by. */
  readonly extremes: { readonly least: string; readonly most: string } | null;
  /** The window it was judged by, exact text, as it was then. */
  readonly window: { readonly low: string | null; readonly high: string | null; readonly unit: Unit } | null;
  /** Tightened once by its nature: whatever puts it in doubt, only new hardware helps. */
  readonly useOnce: boolean;
  /** Load conditions that were already true. */
  readonly loaded: readonly Key[];
  /** Doubts that this mark cleared; striking it brings them back. */
  readonly cleared: readonly Doubt[];
  readonly struck: boolean;
}

export interface FittedItem {
  readonly item: Key;
  readonly lot: LotId | null;
  /** How many times this piece has been fitted, this time included. */
  readonly uses: number;
  readonly spent: boolean;
  /** Loosened since, and not refitted yet. */
  readonly loose?: boolean;
}

/** Hardware of one fastener, by the plan's line it stands for. */
export type FastenerRow = Readonly<Record<Key, FittedItem>>;

export interface Recheck {
  readonly signature: string;
  readonly by: PersonId;
  readonly at: Instant;
  readonly tool: ToolId | null;
  readonly run: RunRef | null;
  readonly cleared: readonly Doubt[];
  readonly struck: boolean;
}

export interface JointRow {
  readonly cycle: number;
  /** That of the last mark that is not struck; kept with the row because every question begins with it. */
  readonly level: Level;
  /** What the standing final was made with. */
  readonly tool: ToolId | null;
  readonly marks: readonly Mark[];
  readonly doubts: readonly Doubt[];
  readonly rechecks: readonly Recheck[];
  /** By fastener number; `joint` holds what serves the joint as a whole. */
  readonly fasteners: Readonly<Record<string, FastenerRow>>;
  /** The lots that stand in it now: how a bad lot is found in every joint it is in. */
  readonly lots: readonly LotId[];
  /** The last opening, and the run that asked for it, if any. */
  readonly opened: {
    readonly at: Instant;
    readonly by: PersonId;
    readonly run: RunRef | null;
    readonly was: string;
  } | null;
}
