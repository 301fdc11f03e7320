/**
 * A car as its page shows it: made on the server for one reader at one moment, in words. Whatever can be done about a
 * line travels beside it as acts; `desk.ts` holds what the forms of those acts are made from.
 */
import type { Day, Instant, Key, PersonId } from '@/lib/domain/base/vocabulary';
import type { LooseEndKind } from '@/lib/domain/loose-ends';
import type { BoardCell } from './board';
import type { ActRef, Desk } from './desk';
import type { LogEntry } from './log';
import type { PhotoRef } from './photo';
import type { RefusalLine } from './said-line';

export interface PersonTag {
  readonly id: PersonId;
  readonly name: string;
  readonly initials: string;
}

/** The signs a row may carry; each is the name of a drawing. */
export type RowSign =
  | RefusalLine['sign']
  | 'verified'
  | 'passed'
  | 'struck'
  | 'gopen'
  | 'wheels'
  | 'engine'
  | 'bled'
  | 'roll'
  | 'fuel'
  | 'nowheels'
  | 'noengine'
  | 'nobled'
  | 'noroll'
  | 'nofuel'
  | 'seal'
  | 'hint'
  | 'add'
  | 'dropped'
  | 'calok'
  | 'vendor'
  | 'tablet'
  | 'queued'
  | 'onetime';

export interface StageView {
  readonly key: Key;
  /** As people count: the first is 1. */
  readonly number: number;
  readonly name: string;
  readonly state: 'done' | 'now' | 'wait';
  /** The same cell as on the track board: one count for both (D61). */
  readonly cell: BoardCell;
  readonly crew: readonly PersonTag[];
  /** How its gate was passed, where it was. */
  readonly passed: string | null;
}

/** `8 hold gate 6` and `12 loose ends` are different questions: each is explained where it stands. */
export interface Counts {
  readonly gate: number;
  readonly gateName: string;
  /** What of it is no loose end. */
  readonly gateSays: string;
  readonly ends: number;
  readonly endsSay: string;
}

export interface Head {
  readonly shop: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly model: string;
  readonly revision: string;
  readonly crew: readonly PersonTag[];
  /** `1967 Dunmore 1800, number DS-04417`; empty where nobody has said. */
  readonly donor: string;
  readonly options: readonly { readonly name: string; readonly choice: string | null }[];
  readonly delivered: boolean;
  /** `In Steering, gate 6 closed by eight`. */
  readonly title: string;
  /** What the two counts mean, side by side. */
  readonly counts: Counts;
}

/** By which gate a promise must be kept. */
export interface DueMark {
  readonly text: string;
  /** It is asked at the gate before the car. */
  readonly isNow: boolean;
}

/** One line of what an operation means, inside its row. */
export interface BodyRow {
  /** Its anchor, where it has its place here. */
  readonly id: string | null;
  readonly sign: RowSign;
  readonly name: string;
  readonly isDone: boolean;
  readonly acts: readonly ActRef[];
  /** The sheet where it is signed. */
  readonly href: string | null;
}

/** A line with a place of its own on the page, that opens to what can be done about it. */
export interface RowView {
  /** Its anchor. */
  readonly id: string;
  readonly sign: RowSign;
  readonly name: string;
  readonly says: string;
  readonly who: readonly PersonTag[];
  /** Who keeps it where it is given to nobody: `nobody`, or `a lead` where it is theirs. */
  readonly keeper: string;
  readonly due: DueMark | null;
  /** What the button says: what is done next about it. */
  readonly open: string;
  /** A sheet of its own where the next thing is done; null = here. */
  readonly sheet: string | null;
  readonly acts: readonly ActRef[];
  /** The job that it is, where it can be given to somebody. */
  readonly job: string | null;
  readonly waits: readonly RefusalLine[];
  readonly body: readonly BodyRow[];
  /** What is looked up: since when, by whom, how long. */
  readonly facts: readonly (readonly [string, string])[];
  /** What was photographed of it; absent where nothing was. */
  readonly photos?: readonly PhotoRef[];
}

export interface ConditionRow extends RowView {
  readonly isSo: boolean;
  /** A drawing of its own stands for it. */
  readonly hasOwnSign: boolean;
}

export interface EndGroup {
  readonly kind: LooseEndKind;
  readonly title: string;
  /** What the gate before the car asks stands first. */
  readonly rows: readonly RowView[];
  /** How many at the end are folded: asked by later gates, and so many that they would hide the rest. */
  readonly folded: number;
}

/** Work that nobody has begun, or that waits or cures: no loose end yet. */
export interface WorkGroup {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly isOpen: boolean;
  readonly rows: readonly RowView[];
}

export interface GateView {
  readonly stage: Key;
  readonly name: string;
  /** The stage that lies behind it; null = delivery. */
  readonly next: { readonly key: Key; readonly name: string } | null;
  readonly lines: readonly RefusalLine[];
  readonly acts: readonly ActRef[];
}

/** A part that comes off the donor: what to expect of it, and what became of it. */
export interface DonorPart {
  /** How it was graded, and where it lies; empty = nobody has. */
  readonly found: string;
  /** The anchor of its row. */
  readonly href: string;
  readonly name: string;
  /** What it is usually graded, and what to look at. */
  readonly grade: string;
  readonly lookedAt: string;
  readonly outside: string;
  readonly state: string;
  /** The donor's own piece, or what stands in its place. */
  readonly piece: string;
  readonly critical: boolean;
}

export interface CarView {
  readonly id: string;
  readonly version: number;
  readonly head: Head;
  readonly stages: readonly StageView[];
  readonly gate: GateView;
  readonly ends: readonly EndGroup[];
  readonly work: readonly WorkGroup[];
  readonly conditions: readonly ConditionRow[];
  readonly options: readonly RowView[];
  readonly parts: readonly RowView[];
  /** All that were taken of the car, the newest first. */
  readonly photos: readonly PhotoRef[];
  readonly donor: readonly DonorPart[];
  readonly lately: readonly LogEntry[];
  readonly desk: Desk;
  /** Where an anchor or a job stands: the ids to open on the way to it, the outermost first. */
  readonly places: Readonly<Record<string, readonly string[]>>;
  /** When time alone changes something here: the page asks again then. */
  readonly again: Instant | null;
  readonly day: Day;
}
