/** The compiled effective plan of one car: positions expanded, references resolved. Every rule reads this. */
import type {
  CheckKind,
  Key,
  Level,
  MarkLevel,
  Method,
  Reuse,
  StateKey,
  VerifyMethod,
} from '@/lib/domain/base/vocabulary';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PlanDocument } from './document';
import type { Limit, Specification, Window } from './window';

/** The one kind of requirement. Whatever must be true before something else is a list of these. */
export type Requirement =
  | { readonly kind: 'operation-finished'; readonly operation: StateKey; readonly untouched: Refusal }
  | {
      readonly kind: 'joint-at-level';
      readonly joint: StateKey;
      readonly level: MarkLevel;
      readonly untouched: Refusal;
    }
  | { readonly kind: 'check-clear'; readonly check: StateKey; readonly untouched: Refusal }
  | { readonly kind: 'stopgap-out'; readonly stopgap: Key }
  | {
      readonly kind: 'condition';
      readonly condition: Key;
      readonly value: boolean;
      readonly otherwise: Refusal;
    }
  | { readonly kind: 'wait-over'; readonly operation: StateKey }
  | { readonly kind: 'part-present'; readonly part: Key }
  | { readonly kind: 'photo-present'; readonly of: StateKey; readonly slot: string }
  | { readonly kind: 'option-chosen'; readonly option: Key };

/** One line of what finishing means, at one position. */
export type BodyRequirement =
  | { readonly verb: 'snug' | 'final' | 'retorque' | 'recheck' | 'open'; readonly joint: StateKey }
  | { readonly verb: 'check'; readonly check: StateKey }
  | { readonly verb: 'place' | 'out'; readonly stopgap: Key }
  | { readonly verb: 'set' | 'clear'; readonly condition: Key }
  | { readonly verb: 'fit'; readonly part: Key }
  | { readonly verb: 'photo'; readonly slot: string };

interface Element {
  readonly key: Key;
  readonly stateKey: StateKey;
  readonly name: string;
  /** Options not chosen yet on which it depends: it can't be started and doesn't count. */
  readonly undecided: readonly Key[];
  /** Index of the stage by whose gate it must be met. */
  readonly due: number;
}

export interface CompiledStage {
  readonly key: Key;
  readonly index: number;
  readonly name: string;
  readonly entry: readonly Requirement[];
  readonly capacity: number | null;
  /** The stages whose cars share this room, itself included. */
  readonly room: readonly Key[];
}

export interface CompiledOperation extends Element {
  readonly stage: number;
  readonly notBefore: boolean;
  readonly who: string | null;
  readonly minutes: number;
  readonly crew: number;
  readonly needs: readonly Requirement[];
  readonly body: readonly BodyRequirement[];
  /** The parts that its body fits. */
  readonly parts: readonly Key[];
  readonly waitMs: number;
  readonly irreversible: boolean;
  readonly madeOn: Key | null;
  readonly redo: boolean;
  readonly repeatable: boolean;
  readonly cautions: readonly Key[];
}

export interface HardwareLine {
  readonly item: Key;
  readonly quantity: number;
  /** Shared out over the fasteners, or one lot for the joint as a whole (a gasket, a U-bolt). */
  readonly per: 'fastener' | 'joint';
  readonly reuse: Reuse;
  /** Work that made what this line holds: due again when it is renewed (D57). */
  readonly dueAgain: readonly StateKey[];
}

export interface SequenceStep {
  readonly step: string;
  /** null: done or not. */
  readonly window: Window | null;
}

export interface CompiledJoint extends Element {
  readonly operation: StateKey | null;
  readonly fasteners: number;
  readonly order: readonly number[];
  readonly passes: number;
  readonly method: Method;
  readonly specification: Specification;
  readonly angle: Window | null;
  readonly sequence: readonly SequenceStep[];
  readonly hardware: readonly HardwareLine[];
  readonly critical: boolean;
  readonly verify: VerifyMethod | null;
  readonly dueLevel: MarkLevel;
  readonly who: string | null;
  readonly verifier: string | null;
  readonly finalNeeds: readonly Requirement[];
  readonly disturbs: readonly StateKey[];
  readonly clears: readonly Key[];
  readonly loadedBy: readonly Key[];
  readonly useOnce: boolean;
  /** Stopgaps that stand as slaves in it: it can't pass snug while one is there. */
  readonly slaves: readonly Key[];
  /** The operations whose body takes it to a level, in the plan's order. */
  readonly broughtBy: readonly {
    readonly operation: StateKey;
    readonly level: Level;
    readonly verb: string;
  }[];
}

export interface CompiledCheck extends Element {
  readonly operation: StateKey | null;
  readonly kind: CheckKind;
  readonly values: readonly { readonly name: string; readonly limit: Limit }[];
  readonly holdsMs: number;
  readonly who: string | null;
  readonly about: Key | null;
  readonly critical: boolean;
  readonly neverConcede: boolean;
  readonly pair: boolean;
}

export interface CompiledStopgap extends Element {
  readonly quantity: number;
  readonly slaveIn: readonly StateKey[];
  readonly adHoc: boolean;
}

export interface CompiledPlan {
  readonly document: PlanDocument;
  readonly options: Readonly<Record<Key, string>>;
  readonly stages: readonly CompiledStage[];
  readonly stageIndex: ReadonlyMap<Key, number>;
  readonly operations: ReadonlyMap<StateKey, CompiledOperation>;
  readonly joints: ReadonlyMap<StateKey, CompiledJoint>;
  readonly checks: ReadonlyMap<StateKey, CompiledCheck>;
  readonly stopgaps: ReadonlyMap<Key, CompiledStopgap>;
  /** All of them in the plan's order, for those who ask about each. */
  readonly all: {
    readonly operations: readonly CompiledOperation[];
    readonly joints: readonly CompiledJoint[];
    readonly checks: readonly CompiledCheck[];
  };
  /** Options by the stage at whose gate one that is still undecided is asked for. */
  readonly optionsDue: readonly (readonly Key[])[];
  /** Operations by what they do: set a condition, fit a part, take a stopgap out, make something on a part, depend on an option. */
  readonly setters: ReadonlyMap<Key, readonly CompiledOperation[]>;
  readonly fitters: ReadonlyMap<Key, readonly CompiledOperation[]>;
  readonly removers: ReadonlyMap<Key, readonly CompiledOperation[]>;
  readonly madeOn: ReadonlyMap<Key, readonly CompiledOperation[]>;
  readonly dependants: ReadonlyMap<Key, readonly CompiledOperation[]>;
  /** Joints that setting a condition puts in doubt. */
  readonly loadedBy: ReadonlyMap<Key, readonly CompiledJoint[]>;
  /** Operations, checks and joints that an operation names: what nests under it in a refusal. */
  readonly under: ReadonlyMap<
    StateKey,
    { readonly joints: readonly CompiledJoint[]; readonly checks: readonly CompiledCheck[] }
  >;
}
