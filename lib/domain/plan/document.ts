/**
 * A build plan revision as it is written: the frozen document that a hash is taken of.
 * Only `resolvePlan` and `compilePlan` read it; every rule reads the compiled plan.
 *
 * Texts that have a notation of their own (see `notation.ts`):
 *   Need       `FR-010`  `K-16`  `J-110 final`  `+weight`  `-fuel-in`  `G-05 out`  `wait FR-080`  `part P-26`  `photo FR-060/stamp`
 *   Body line  `snug J-1`  `final J-1`  `retorque J-1`  `recheck J-1`  `open J-1`  `check K-1`  `place G-1`  `out G-1`
 *              `set on-jig`  `clear on-jig`  `fit P-26`  `photo stamp`
 *   Window     `45 ± 3 N·m`  `45 ± 5 % N·m`  `190 to 230 lbf·ft`  `>= 25 mm`  `<= 0.1 mm`  `yes`
 *   Condition  `heater=none and not (axle=rebuilt or tank=lined)`
 *   Duration   `16 h`  `10 min`  `7 d`
 *   Length     `6 m`  `3150 mm`  `1/8 in`         Pieces  `2 × 3150 mm`
 *   Repeat     `sides`  `corners`  or a number
 *   Reference  `J-110`  `J-110@L`  `J-110@*`
 */
import type { CheckKind, Key, Level, Method, VerifyMethod } from '@/lib/domain/base/vocabulary';

export interface PlanDocument {
  /** The model that is built, `Corbel 54`. */
  readonly plan: string;
  readonly revision: string;
  readonly note?: string;
  readonly options?: Readonly<Record<Key, OptionEntry>>;
  readonly conditions?: Readonly<Record<Key, string>>;
  readonly stages: Readonly<Record<Key, StageEntry>>;
  readonly operations?: Readonly<Record<Key, OperationEntry>>;
  readonly joints?: Readonly<Record<Key, JointEntry>>;
  readonly checks?: Readonly<Record<Key, CheckEntry>>;
  readonly stopgaps?: Readonly<Record<Key, StopgapEntry>>;
  readonly parts?: Readonly<Record<Key, PartEntry>>;
  readonly items?: Readonly<Record<Key, ItemEntry>>;
  readonly cautions?: Readonly<Record<Key, CautionEntry>>;
}

/** A choice the plan offers. An undecided option keeps what depends on it from starting. */
export interface OptionEntry {
  readonly name: string;
  readonly choices: readonly string[];
  readonly usual?: string;
}

export interface StageEntry {
  readonly name: string;
  readonly purpose?: string;
  /** What a car must have before it may come in, besides everything due earlier. */
  readonly entry?: readonly string[];
  /** How many cars have room here at once; absent = no limit. */
  readonly capacity?: number;
  /** Another stage whose capacity these cars share. */
  readonly sharesRoomWith?: Key;
  /** Its work may not start before the car stands in it. */
  readonly notBefore?: boolean;
}

export interface OperationEntry {
  readonly name: string;
  readonly stage: Key;
  readonly repeat?: Repeat;
  readonly when?: string;
  readonly minutes?: number;
  readonly crew?: number;
  /** The qualification that each person on it must hold; absent = anyone. */
  readonly who?: string;
  readonly equipment?: readonly string[];
  readonly cautions?: readonly Key[];
  readonly steps?: readonly string[];
  readonly needs?: readonly string[];
  readonly body?: readonly string[];
  readonly hardware?: Readonly<Record<Key, HardwareQuantity>>;
  readonly consumables?: Readonly<Record<Key, string | number>>;
  /** What is cut here, by item: each piece by its name, with its number and length. At each position, as consumables. */
  readonly pieces?: Readonly<Record<Key, Readonly<Record<string, string>>>>;
  /** Time that must pass after it is finished, before what needs `wait KEY`. */
  readonly wait?: string;
  readonly waitFor?: string;
  /** How long the work is away at another firm: advice for the schedule. */
  readonly outside?: string;
  readonly irreversible?: boolean;
  /** Joints that nobody can see any more once this is done: each must be at its due level before. */
  readonly covers?: readonly string[];
  /** The part that carries what is made here: replacing the part makes this work due again. */
  readonly madeOn?: Key;
  /** Becomes due again by itself when a condition that it sets is lost. */
  readonly redo?: boolean;
  /** May be run again at will. */
  readonly repeatable?: boolean;
  /** One set-up may serve several cars: advice for the schedule. */
  readonly batch?: boolean;
  readonly notBefore?: boolean;
  readonly due?: Key;
}

/** A number, or a number with what else must be done when this line is renewed. */
export type HardwareQuantity =
  | number
  | { readonly quantity: number; readonly dueAgain?: readonly Key[]; readonly per?: 'fastener' | 'joint' };

export interface JointEntry {
  readonly name: string;
  readonly repeat?: Repeat;
  readonly when?: string;
  readonly fasteners: number;
  /** The tightening order: a named pattern, or the fasteners' numbers in order. */
  readonly pattern?: Pattern | readonly number[];
  readonly passes?: number;
  readonly method: Method;
  /** What the fastener must get: a window, or `no value yet`, or `no value published`. Not for a sequence. */
  readonly torque?: string;
  /** Where the value is from. */
  readonly source?: string;
  /** What to look for where no value is published. */
  readonly firmMeans?: string;
  /** Angle method: the turn after the seat torque, `90 ± 5 °`. */
  readonly angle?: string;
  /** Sequence method: the steps in order, each with its window or `done`. */
  readonly sequence?: Readonly<Record<string, string>>;
  /** Tighten to the low end, then on to the next slot, never past the high end. */
  readonly slot?: boolean;
  /** The place asks for a crow's-foot or extension. */
  readonly adapter?: boolean;
  readonly thread?: string;
  readonly grade?: string;
  readonly length?: string;
  /** The factor K of T = K·D·F that the value was judged with. */
  readonly friction?: number;
  readonly hardware?: Readonly<Record<Key, HardwareQuantity>>;
  readonly critical?: boolean;
  readonly verify?: VerifyMethod;
  /** Qualification of who brings it to final; absent = as its operation. */
  readonly who?: string;
  /** Qualification of who verifies; absent = the joint's own. */
  readonly verifier?: string;
  readonly finalNeeds?: readonly string[];
  /** Joints that opening this one puts in doubt; one step, not on from there. */
  readonly disturbs?: readonly string[];
  /** Conditions that opening this one ends. */
  readonly clears?: readonly Key[];
  /** Conditions whose first setting after final puts it in doubt. */
  readonly loadedBy?: readonly Key[];
  /** Tightened once: the only remedy is to renew. */
  readonly useOnce?: boolean;
  readonly due?: Key;
  /** Must be at its due level before this operation may start. */
  readonly before?: Key;
  readonly dueLevel?: Exclude<Level, 'open'>;
}

export interface CheckEntry {
  readonly name: string;
  readonly repeat?: Repeat;
  readonly when?: string;
  readonly kind: CheckKind;
  readonly values?: Readonly<Record<string, string>>;
  /** Functional: how long it must hold. */
  readonly holds?: string;
  readonly with?: readonly string[];
  readonly who?: string;
  /** The part or joint that a failure is about. */
  readonly about?: Key;
  readonly critical?: boolean;
  readonly neverConcede?: boolean;
  /** Replace both sides where one fails. */
  readonly pair?: boolean;
  readonly due?: Key;
  readonly before?: Key;
  readonly failure?: string;
  readonly source?: string;
}

export interface StopgapEntry {
  readonly name: string;
  readonly quantity: number;
  readonly when?: string;
  readonly where?: string;
  readonly standsFor?: string;
  /** Joints that a slave part or bolt stands in: they can't pass snug while it is there. */
  readonly slaveIn?: readonly string[];
  /** The stage by whose gate it must be out. */
  readonly outBy: Key;
  readonly adHoc?: boolean;
}

export interface PartEntry {
  readonly name: string;
  readonly origin?: 'donor' | 'bought' | 'made';
  /** What a donor part is usually graded. */
  readonly grade?: 'reuse' | 'refurbish' | 'replace' | 'scrap';
  readonly lookedAt?: string;
  /** Graded *reuse* it counts as here only once somebody has said what they looked at: cleaned, measured, tested. */
  readonly lookOver?: boolean;
  readonly outside?: string;
  readonly critical?: boolean;
  readonly when?: string;
}

export interface ItemEntry {
  readonly name: string;
  readonly unit?: string;
  /** `once fitted`, `once final`, `3 times`, `always`. Absent = always. */
  readonly reuse?: string;
  readonly trace?: 'lot' | 'bulk';
  readonly note?: string;
  /** For what is cut from lengths: how. */
  readonly cut?: CutEntry;
  /** What may stand in for it. */
  readonly substitutes?: Readonly<Record<Key, SubstituteEntry>>;
}

export interface CutEntry {
  /** The lengths that it is sold in. */
  readonly lengths: readonly string[];
  /** What each cut takes away. */
  readonly kerf: string;
  /** What is cut away at each end before the rest is good; absent = nothing. */
  readonly ends?: string;
  /** The shortest rest that goes back into the rack; absent = none does. */
  readonly keep?: string;
}

/** Directed: the item it stands under may become this one, not back. */
export interface SubstituteEntry {
  readonly condition?: string;
  /** Only in these joints; absent = in all but `notIn`. */
  readonly onlyIn?: readonly Key[];
  readonly notIn?: readonly Key[];
  /** A lead must have signed for it first. */
  readonly asksLead?: boolean;
}

export interface CautionEntry {
  readonly hazard: string;
  readonly text: string;
  readonly source?: string;
}

export type Repeat = 'sides' | 'corners' | number;

export const PATTERNS = ['line', 'circle', 'cross', 'star', 'spiral', 'from-centre'] as const;
export type Pattern = (typeof PATTERNS)[number];
