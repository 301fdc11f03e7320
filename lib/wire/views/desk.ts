/** What the forms of a car's acts are made from: the plan's values, where each thing stands, and who may do what. */
import type {
  CarId,
  Disposition,
  Instant,
  Key,
  Level,
  PersonId,
  Role,
  VerifyMethod,
} from '@/lib/domain/base/vocabulary';
import type { PartRow } from '@/lib/domain/car/rows';
import type { CarClaim, UsedLot } from '@/lib/domain/commands';
import type { SaidRefusal } from '@/lib/wire/door';
import type { PersonTag } from './car';
import type { HardwareView, LotChoice } from './sign-off';

export type CarClaimType = CarClaim['type'];
export type ThingKind =
  | 'operation'
  | 'joint'
  | 'check'
  | 'stopgap'
  | 'finding'
  | 'change'
  | 'hold'
  | 'condition'
  | 'part'
  | 'option'
  | 'signature'
  | 'stage'
  | 'car';

/** Something that may be claimed about a thing. */
export interface ActRef {
  readonly type: CarClaimType;
  readonly kind: ThingKind;
  readonly key: string;
  /** Which of `Desk.whys` says who may not. */
  readonly why: number;
  /** Which of `Desk.reasons` stand against it now, whoever gives it; absent where none does, or no thing is named yet. */
  readonly reasons?: readonly number[];
}

export interface OperationThing {
  readonly name: string;
  readonly run: number;
  readonly crew: number;
  readonly present: readonly PersonId[];
  readonly cautions: readonly Key[];
  readonly steps: readonly string[];
  readonly irreversible: boolean;
  /** What finishing it uses up that is traced by lot. */
  readonly uses?: readonly UsesUp[];
}

export interface UsesUp {
  readonly item: Key;
  readonly name: string;
  /** `0.5 l`. */
  readonly quantity: string;
  /** From which lots, unless somebody says otherwise. */
  readonly proposed: readonly UsedLot[];
  readonly lots: readonly LotChoice[];
}

export interface ToolChoice {
  readonly id: string;
  readonly name: string;
  readonly whyNot?: string;
}

export interface JointThing {
  readonly name: string;
  readonly stage: number;
  readonly level: Level;
  readonly doubted: boolean;
  readonly cycle: number;
  readonly fasteners: readonly number[];
  /** What opening all of it would bring, in words; only where it is more than the joint itself. */
  readonly opening?: readonly string[];
  /** What the forms that tighten, verify or recheck it ask for. */
  readonly work?: JointWork;
}

export interface JointWork {
  readonly verify: VerifyMethod | null;
  /** It is applied again with a torque tool. */
  readonly takesTool: boolean;
  readonly tools: readonly ToolChoice[];
  readonly torque: string;
  readonly hardware: readonly HardwareView[];
}

export interface CheckThing {
  readonly name: string;
  readonly stage: number;
  readonly round: number;
  readonly status: 'not done' | 'running' | 'clear' | 'failed' | 'due again' | 'conceded';
  /** What the forms that pass or fail it ask for. */
  readonly look?: CheckLook;
}

export interface CheckLook {
  readonly values: readonly CheckValue[];
  /** How long it must hold; 0 = it is looked at once. */
  readonly holdsMs: number;
  readonly begunAt: Instant | null;
  readonly by: string | null;
  readonly gauges: readonly ToolChoice[];
  readonly neverConcede: boolean;
  readonly failure: string | null;
}

export type CheckValue =
  | {
      readonly kind: 'window';
      readonly name: string;
      readonly limit: string;
      readonly unit: string;
      /** The ends as decimal text, so that the screen can say at once on which side a value lies. */
      readonly low: string | null;
      readonly high: string | null;
    }
  | { readonly kind: 'statement'; readonly name: string; readonly limit: string };

export interface StopgapThing {
  readonly name: string;
  readonly placed: number;
  readonly left: number;
  readonly where: string | null;
  readonly outBy: string;
}

export interface FindingThing {
  readonly about: string;
  readonly text: string;
  readonly dispositions: readonly DispositionChoice[];
}

export interface DispositionChoice {
  readonly disposition: Disposition;
  /** Why it can't be chosen. */
  readonly barred: string | null;
  /** What it would bring, as the rules foresee it. */
  readonly brings: readonly string[];
}

export interface ChangeThing {
  readonly says: string;
  readonly reason: string;
  readonly critical: boolean;
  readonly approvals: readonly string[];
}

export interface HoldThing {
  readonly scope: string;
  readonly reason: string;
}

export interface ConditionThing {
  readonly name: string;
  readonly value: boolean;
  /** What ending it would bring. */
  readonly ending: readonly string[];
}

export interface PartThing {
  readonly name: string;
  readonly state: PartRow['state'];
  readonly taking: readonly string[];
  /** Where to look, as the plan has it; empty = it says nothing. */
  readonly lookedAt: string;
  /** It counts as here only after a look that says what was looked at. */
  readonly waitsForLook: boolean;
  /** The trip that it is out on, or back from and not looked over. */
  readonly trip: string | null;
  /** Cars that gave theirs up for this one. */
  readonly givers: readonly string[];
  /** What it may be taken off the shelf as. */
  readonly shelf: readonly ShelfPiece[];
}

/** A trip that parts may go on. */
export interface TripThing {
  readonly trip: string;
  readonly says: string;
}

export interface ShelfPiece {
  readonly item: string;
  readonly lot: string | null;
}

export interface OptionThing {
  readonly name: string;
  readonly choices: readonly string[];
  readonly usual: string | null;
}

export interface SignatureThing {
  readonly says: string;
  readonly by: PersonId;
  readonly when: string;
  /** What striking it would bring. */
  readonly striking: readonly string[];
  /** Which of `Desk.whys` says who may not strike it. */
  readonly why: number;
}

export interface StageThing {
  readonly number: number;
  readonly name: string;
}

type Things<Thing> = Readonly<Record<string, Thing>>;

export interface Desk {
  readonly car: string;
  readonly chassis: string;
  readonly colour: string | null;
  /** Index of the stage that it stands in. */
  readonly stage: number;
  readonly me: { readonly id: PersonId; readonly name: string; readonly roles: readonly Role[] };
  readonly people: readonly PersonTag[];
  /** By person, why he or she may not; who is missing in a table may. */
  readonly whys: readonly Readonly<Record<PersonId, string>>[];
  /** What the state of things holds against acts: a refusal that is still open is followed by it. */
  readonly reasons: readonly SaidRefusal[];
  readonly cautions: Things<{ readonly hazard: string; readonly text: string }>;
  readonly stages: Things<StageThing>;
  readonly operations: Things<OperationThing>;
  readonly joints: Things<JointThing>;
  readonly checks: Things<CheckThing>;
  readonly stopgaps: Things<StopgapThing>;
  /** What the plan knows as stopgaps, for placing one. */
  readonly planned: Things<{ readonly name: string; readonly quantity: number; readonly outBy: string }>;
  readonly findings: Things<FindingThing>;
  readonly changes: Things<ChangeThing>;
  readonly holds: Things<HoldThing>;
  readonly conditions: Things<ConditionThing>;
  readonly parts: Things<PartThing>;
  readonly options: Things<OptionThing>;
  readonly signatures: Things<SignatureThing>;
  /** Whom each job and stage was given to. */
  readonly given: Readonly<Record<string, readonly PersonId[]>>;
  /** Other cars on the floor: a part may be taken for one of them. */
  readonly trips: readonly TripThing[];
  readonly cars: readonly CarId[];
  /** Acts about the car as a whole and about anything on it: what is always at hand. */
  readonly always: readonly ActRef[];
}
