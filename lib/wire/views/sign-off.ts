/**
 * What the sign-off sheet of one joint shows. Plain data: exact numbers travel as `num/den`, and what the browser
 * needs to judge a reading by itself (D46) is here as the rulebook has it.
 */
import type { Unit } from '@/lib/domain/base/units';
import type {
  Day,
  DoubtCause,
  Instant,
  Key,
  Level,
  MarkLevel,
  Method,
  Remedy,
  StateKey,
  VerifyMethod,
} from '@/lib/domain/base/vocabulary';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { JointActName, JointAsk } from '@/lib/domain/joint-asks';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import type { PhotoRef } from './photo';
import type { RefusalLine } from './said-line';

export interface SignOffView {
  readonly car: {
    readonly id: string;
    readonly chassis: string;
    readonly colour: string | null;
    readonly model: string;
    readonly revision: string;
    readonly version: number;
  };
  /** The moment and the shop's day by which tools were judged; the sheet judges by the same. */
  readonly judgedAt: Instant;
  readonly day: Day;
  readonly joint: JointView;
  readonly doubts: readonly DoubtView[];
  /** Signed steps of this cycle, oldest first, struck ones too. */
  readonly marks: readonly MarkView[];
  /** The final that it stands by, if any. */
  readonly standing: StandingView | null;
  readonly drawing: DrawingView;
  readonly hardware: readonly HardwareView[];
  readonly tools: readonly ToolView[];
  readonly adapters: readonly Adapter[];
  readonly people: readonly PersonView[];
  readonly acts: Readonly<Record<JointActName, ActView>>;
  /** What the sheet is open for: the act that comes next, or `rest` where nothing is asked. */
  readonly next: JointAsk;
  /** Is anything to sign or to do, so that it matters at which car one stands? */
  readonly isAsked: boolean;
  /** Must hold before the final. */
  readonly needs: readonly RefusalLine[];
  /** Of the joint, and of findings about it, the oldest first; absent where there are none. */
  readonly photos?: readonly PhotoRef[];
}

/** A window as exact text; a missing end is open. */
export interface WindowView {
  readonly low: string | null;
  readonly high: string | null;
  readonly target: string | null;
  readonly unit: Unit;
  readonly text: string;
}

export type SpecificationView =
  | {
      readonly kind: 'window';
      readonly window: WindowView;
      /** What to aim at: the target, else the middle; for a castle nut the low end. */
      readonly aim: string;
    }
  | { readonly kind: 'no-value-yet' }
  | { readonly kind: 'no-value-published' };

export interface JointView {
  readonly key: StateKey;
  readonly name: string;
  /** `left`, `front right`, `no. 2`; null where there is one. */
  readonly position: string | null;
  readonly operation: { readonly key: StateKey; readonly name: string } | null;
  readonly dueStage: string;
  readonly critical: boolean;
  readonly who: Key | null;
  readonly verifier: Key | null;
  readonly level: Level;
  readonly cycle: number;
  readonly dueLevel: MarkLevel;
  readonly verify: VerifyMethod | null;
  readonly method: Method;
  readonly fasteners: number;
  readonly order: readonly number[];
  readonly passes: number;
  readonly specification: SpecificationView;
  readonly angle: WindowView | null;
  readonly sequence: readonly { readonly step: string; readonly window: WindowView | null }[];
  readonly useOnce: boolean;
  /** A castle nut: from the low end on to the next slot, never past the high end. */
  readonly slot: boolean;
  /** The place asks for a crow's-foot. */
  readonly asksAdapter: boolean;
  readonly firmMeans: string | null;
  readonly source: string | null;
  readonly thread: string | null;
  /** `nut`, `bolt` …: what its fasteners are called. */
  readonly word: { readonly one: string; readonly many: string };
  readonly opened: { readonly when: string; readonly by: string; readonly was: string } | null;
}

export interface DoubtView {
  readonly cause: DoubtCause;
  readonly remedy: Remedy;
  readonly fasteners: readonly number[] | null;
  /** Why, and what clears it. */
  readonly says: string;
  readonly clears: string;
}

export interface MarkView {
  readonly signature: string;
  readonly level: MarkLevel;
  readonly by: string;
  readonly when: string;
  readonly struck: boolean;
}

export interface StandingView {
  readonly by: string;
  readonly when: string;
  readonly tool: string | null;
  readonly adapter: string | null;
  /** In the tool's unit; null where the tool left the shop. */
  readonly unit: Unit | null;
  readonly readings: readonly {
    readonly fastener: number;
    /** What the tool showed, exact; null where that can't be told from what the fastener got. */
    readonly shown: string | null;
    readonly delivered: string;
  }[];
  readonly window: Pick<WindowView, 'low' | 'high' | 'unit'> | null;
}

/** Where each fastener is drawn, on a ground of 300 by 356. Not to scale. */
export interface DrawingView {
  readonly radius: number;
  readonly points: readonly { readonly fastener: number; readonly x: number; readonly y: number }[];
  /** In words, for who can't see it: `4 nuts, tightened crosswise: 1, 3, 2, 4`. */
  readonly says: string;
}

export interface HardwareView {
  readonly item: Key;
  readonly name: string;
  readonly quantity: number;
  readonly perFastener: boolean;
  /** `used once, spent at final torque`. */
  readonly rule: string;
  readonly isOnce: boolean;
  readonly isTracedByLot: boolean;
  /** Fastener number, or null for what serves the joint as a whole. */
  readonly places: readonly {
    readonly fastener: number | null;
    readonly state: 'empty' | 'in' | 'loose' | 'spent';
    readonly lot: string | null;
    /** A new one goes in by itself. */
    readonly isNew: boolean;
  }[];
  /** Where it lies; null = nobody has said. */
  readonly bin: string | null;
  /** From which lots what goes in new is taken, unless somebody says otherwise. */
  readonly proposed: readonly FittedClaim[];
  /** In the order to take them; then those that can't be, or of which none is left. */
  readonly lots: readonly LotChoice[];
  readonly substitutes: readonly {
    readonly item: Key;
    readonly name: string;
    readonly condition: string | null;
    readonly asksLead: boolean;
    readonly lots: readonly LotChoice[];
  }[];
}

export interface LotChoice {
  readonly id: string;
  /** `in 09C, 12 there`, `off its donor, in 02A, 4 there`, `in the kit`, `none left by the books`. */
  readonly says: string;
  readonly whyNot: string | null;
}

export interface ToolView {
  readonly tool: Tool;
  /** `20 to 100 N·m`. */
  readonly range: string;
  /** `good to 12 Mar 2027`. */
  readonly good: string;
  /** Without and with each adapter. */
  readonly ways: readonly ToolWay[];
  /** Why it can't be used to try the joint again; empty where it can. */
  readonly whyNotReapply: readonly string[];
}

export interface ToolWay {
  readonly adapter: string | null;
  /** Why the final can't be made this way; empty where it can. */
  readonly whyNot: readonly string[];
  /** What goes on the tool, exact and in its unit; null where nothing does or nobody can say. */
  readonly setting: string | null;
  /** How it comes about, `45 × 362 / (362 + 38) = 40.725`; empty where it is the plan's own number. */
  readonly formula: string;
}

export interface PersonView {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
  /** On the running work that names the joint. */
  readonly isOnIt: boolean;
  /** Why not, in a few words; null = may. */
  readonly whyNotSign: string | null;
  readonly whyNotVerify: string | null;
  /** Once it is final, signed by somebody else. */
  readonly whyNotVerifyAfter: string | null;
}

export interface ActView {
  /** Is it this act that the joint asks for or allows now, apart from what stands in its way? */
  readonly isOffered: boolean;
  /** What would be refused whoever signed, however good the evidence. */
  readonly inTheWay: readonly RefusalLine[];
  /** The running operation that it belongs to. */
  readonly run: { readonly operation: StateKey; readonly name: string } | null;
}
