/**
 * A car as flat maps of plain rows, keyed like the tables. An absent row means untouched: not started, open in
 * cycle 1, check not done, condition false. Rows hold what events said; what follows from them is asked of
 * `joint.ts`, `operation.ts` … and never stored.
 */
import type {
  CarId,
  Disposition,
  HoldScope,
  Instant,
  Key,
  LotId,
  PersonId,
  StateKey,
} from '@/lib/domain/base/vocabulary';
import type { JointRow, RunRef } from './joint-rows';
import type { ComponentRow } from './component-rows';
import type { DonorRow } from './donor-identity';
import type { KitRow } from '@/lib/domain/car/kit-rows';

export interface OperationRow {
  readonly run: number;
  readonly status: 'running' | 'paused' | 'finished' | 'due-again';
  /** Everyone who started or joined this run. */
  readonly crew: readonly PersonId[];
  /** Everyone of the runs before it, by run: they had their hands on its joints. */
  readonly earlierCrews: Readonly<Record<string, readonly PersonId[]>>;
  /** Who is on it now. */
  readonly present: readonly PersonId[];
  readonly startedAt: Instant | null;
  readonly finishedAt: Instant | null;
  /** The server's time of hearing it: a wait needs the server's clock as well (D1). */
  readonly finishedReceivedAt: Instant | null;
  readonly finishSignature: string | null;
  readonly waitMs: number;
  readonly waitEnded: boolean;
  readonly leftAs: string | null;
  readonly why: string | null;
  /** What it used up of known lots, in all of its runs; absent where none is known. */
  readonly used?: readonly UsedUp[];
}

/** So much of a lot, as stock's events say it. */
export interface UsedUp {
  readonly item: Key;
  readonly lot: LotId;
  readonly quantity: string;
  readonly run: number;
}

export interface CheckRow {
  readonly round: number;
  readonly status: 'running' | 'clear' | 'failed' | 'due-again' | 'conceded';
  readonly begunAt: Instant | null;
  readonly by: PersonId | null;
  readonly at: Instant | null;
  readonly signature: string | null;
  readonly values: Readonly<Record<string, string>>;
  readonly finding: string | null;
  readonly why: string | null;
}

export interface ConditionRow {
  readonly value: boolean;
  readonly run: RunRef | null;
  readonly at: Instant;
  readonly by: PersonId;
  readonly because: string;
}

export interface StopgapRow {
  /** The plan's key, or null for one placed by tap. */
  readonly stopgap: Key | null;
  readonly what: string;
  readonly placed: number;
  readonly removed: number;
  /** How many came out under which signature. */
  readonly removals: Readonly<Record<string, number>>;
  /** Stage by whose gate it must be out. */
  readonly outBy: number;
  readonly slaveIn: readonly StateKey[];
  readonly where: string | null;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface FindingRow {
  readonly about: { readonly kind: 'part' | 'joint' | 'check' | 'place'; readonly key: string };
  readonly text: string;
  readonly check: { readonly key: StateKey; readonly round: number } | null;
  /** Stage by whose gate it must be decided: never later than the gate it was found at (D30). */
  readonly due: number;
  /** Stage by whose gate its work must be done: the earliest due of what it touches. */
  readonly workDue: number;
  readonly critical: boolean;
  readonly state: 'undecided' | 'decided' | 'closed';
  readonly disposition: Disposition | null;
  /** The piece it is about was condemned. */
  readonly replaced: boolean;
  readonly change: string | null;
  readonly by: PersonId;
  readonly at: Instant;
  readonly decidedBy: PersonId | null;
  readonly closedBy: PersonId | null;
}

/** What a change does to this car's plan. One kind so far: take something as it is. */
export type Edit =
  | { readonly kind: 'accept'; readonly finding: string }
  | { readonly kind: 'accept'; readonly wait: StateKey };

export interface ChangeRow {
  readonly edits: readonly Edit[];
  readonly reason: string;
  readonly due: number;
  readonly critical: boolean;
  readonly state: 'asked' | 'approved' | 'declined';
  readonly requestedBy: PersonId;
  /** Who did the work that it is about: they don't approve it. */
  readonly performers: readonly PersonId[];
  readonly approvals: readonly { readonly by: PersonId; readonly owner: boolean; readonly at: Instant }[];
  readonly at: Instant;
}

export interface HoldRow {
  readonly scope: HoldScope;
  readonly things: readonly string[];
  readonly reason: string;
  readonly by: PersonId;
  readonly at: Instant;
  readonly releasedBy: PersonId | null;
}

export interface PartRow {
  /** Out: at who does outside work. Back: from there, and nobody has looked it over. Neither is here. */
  readonly state: 'absent' | 'present' | 'fitted' | 'taken' | 'out' | 'back';
  /** Which piece it is: rises each time the part is replaced. */
  readonly piece: number;
  readonly run: RunRef | null;
  readonly takenFor: string | null;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface PhotoRow {
  readonly of: string;
  readonly slot: string;
  readonly hash: string;
  readonly by: PersonId;
  readonly at: Instant;
}

/** Who signed what; the evidence stands in the row that it is about. */
export interface SignatureRow {
  readonly act: string;
  readonly subject: string;
  /** Cycle, run or round that it is for. */
  readonly number: number;
  readonly by: PersonId;
  readonly at: Instant;
  readonly struck: { readonly by: PersonId; readonly reason: string; readonly at: Instant } | null;
}

export interface GateRow {
  readonly passedAt: Instant;
  readonly by: PersonId;
  readonly overridden: readonly string[];
}

export interface NoteRow {
  readonly of: string;
  readonly text: string;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface AssignmentRow {
  readonly people: readonly PersonId[];
}

export interface Car {
  readonly id: CarId;
  readonly chassis: string;
  readonly colour: string | null;
  /** Hash of the plan revision. */
  readonly plan: string;
  readonly options: Readonly<Record<Key, string>>;
  /** Which vehicle gave its parts; absent = nobody has said. */
  readonly donor?: DonorRow;
  /** Index of the stage it stands in. */
  readonly stage: number;
  readonly delivered: boolean;
  readonly version: number;
  readonly operations: Readonly<Record<StateKey, OperationRow>>;
  readonly joints: Readonly<Record<StateKey, JointRow>>;
  readonly checks: Readonly<Record<StateKey, CheckRow>>;
  readonly conditions: Readonly<Record<Key, ConditionRow>>;
  readonly stopgaps: Readonly<Record<string, StopgapRow>>;
  readonly findings: Readonly<Record<string, FindingRow>>;
  readonly changes: Readonly<Record<string, ChangeRow>>;
  readonly holds: Readonly<Record<string, HoldRow>>;
  readonly parts: Readonly<Record<Key, PartRow>>;
  readonly photos: Readonly<Record<string, PhotoRow>>;
  readonly signatures: Readonly<Record<string, SignatureRow>>;
  readonly gates: Readonly<Record<Key, GateRow>>;
  readonly notes: Readonly<Record<string, NoteRow>>;
  readonly assignments: Readonly<Record<string, AssignmentRow>>;
  readonly kits: Readonly<Record<StateKey, KitRow>>;
  /** By part. */
  readonly components: Readonly<Record<Key, ComponentRow>>;
}

/** The maps of a car that become tables, in one list for the codec and the diff. */
export const CAR_TABLES = [
  'operations',
  'joints',
  'checks',
  'conditions',
  'stopgaps',
  'findings',
  'changes',
  'holds',
  'parts',
  'photos',
  'signatures',
  'gates',
  'notes',
  'assignments',
  'kits',
  'components',
] as const satisfies readonly (keyof Car)[];
export type CarTable = (typeof CAR_TABLES)[number];
