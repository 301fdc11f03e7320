/**
 * What a person may claim. A command says only that: its id (made on the device), when it was done, and the claim.
 * Who says it, on which device, and what the shop knows are facts. `authority.ts` lists them all in one table.
 * Joints, operations, checks are named by state key (`J-110@L`); `cycle`, `run`, `round` guard against a stale claim.
 */
import type { Unit } from './base/units';
import type {
  CarId,
  Day,
  Disposition,
  HoldScope,
  Instant,
  Key,
  LotId,
  PersonId,
  Role,
  StateKey,
  SuspectReason,
  ToolId,
  ToolKind,
  VerifyMethod,
} from './base/vocabulary';
import type { FittedClaim } from './car/hardware';
import type { ComponentClaim, ReceivePart, RecordDonor } from './component-claims';
import type { CutClaim } from './cut-claims';
import type { DonorHardwareClaim } from './donor-claims';
import type { KitClaim } from './kit-claims';
import type { PurchaseClaim } from './purchase-claims';
import type { Qualification, QualificationEnd } from './shop/rows';
import type { StockClaim } from './stock-claims';
import type { SupplyClaim } from './supply-claims';
import type { TorqueEvidence } from './torque/evidence';
import type { TripClaim } from './trip-claims';

export interface Command {
  readonly id: string;
  readonly doneAt: Instant;
  readonly claim: Claim;
  /** Lets the lead past a soft refusal. */
  readonly override?: { readonly code: string; readonly reason: string };
  /** The refused command that this one tries again. */
  readonly retryOf?: string;
  /** Commands given together for several cars. */
  readonly batch?: string;
}

export type Claim = ShopClaim | CarClaim;
export type ClaimType = Claim['type'];

export type ShopClaim =
  | {
      readonly type: 'add-person';
      readonly person: PersonId;
      readonly name: string;
      readonly roles: readonly Role[];
      readonly qualifications?: readonly Qualification[];
    }
  | { readonly type: 'qualify-person'; readonly person: PersonId; readonly qualification: Qualification }
  | ({ readonly type: 'end-qualification' } & QualificationEnd)
  | { readonly type: 'rename-person'; readonly person: PersonId; readonly name: string }
  | { readonly type: 'change-roles'; readonly person: PersonId; readonly roles: readonly Role[] }
  | { readonly type: 'remove-person'; readonly person: PersonId }
  | AddTool
  | {
      readonly type: 'add-adapter';
      readonly adapter: string;
      readonly name: string;
      readonly extension: string;
      readonly unit: Unit;
      readonly angle?: number;
    }
  | RecordCalibration
  | {
      readonly type: 'suspect-tool';
      readonly tool: ToolId;
      readonly reason: SuspectReason;
      readonly from?: Instant;
    }
  | {
      readonly type: 'receive-lot';
      readonly lot: LotId;
      readonly item: Key;
      readonly quantity: number;
      readonly certificate?: string;
      readonly certificateAsked?: boolean;
      readonly expires?: Day;
    }
  | { readonly type: 'release-plan'; readonly plan: string }
  | { readonly type: 'quarantine-lot'; readonly lot: LotId; readonly reason: string }
  | { readonly type: 'clear-lot'; readonly lot: LotId; readonly reason: string }
  | DonorHardwareClaim
  | StockClaim
  | CutClaim
  | SupplyClaim
  | PurchaseClaim
  | TripClaim
  | { readonly type: 'set-rate'; readonly from: Day; readonly money: number };

export interface AddTool {
  readonly type: 'add-tool';
  readonly tool: ToolId;
  readonly name: string;
  readonly kind: ToolKind;
  readonly low: string;
  readonly high: string;
  readonly unit: Unit;
  readonly length?: { readonly value: string; readonly unit: Unit };
  readonly calibrated?: { readonly on: Day; readonly due: Day; readonly certificate?: string };
  readonly cycleLimit?: number;
}

/** As-found: what it delivered for what it was set to. Errors outside ± the tolerance put its signatures in doubt. */
export interface RecordCalibration {
  readonly type: 'record-calibration';
  readonly tool: ToolId;
  readonly on: Day;
  readonly due: Day;
  readonly certificate?: string;
  readonly asFound?: readonly { readonly set: string; readonly delivered: string }[];
  /** Percent of the reading, from the certificate. */
  readonly uncertainty?: string;
  /** Percent; 4 unless said otherwise. */
  readonly tolerance?: string;
}

/** A lot that work used up. Without a quantity: all that the lots named before it leave. */
export interface UsedLot {
  readonly item: Key;
  readonly lot: LotId;
  readonly quantity?: string;
}

interface OnCar {
  readonly car: CarId;
}
interface OnOperation extends OnCar {
  readonly operation: StateKey;
  readonly run?: number;
}
interface OnJoint extends OnCar {
  readonly joint: StateKey;
  readonly cycle?: number;
}
interface OnCheck extends OnCar {
  readonly check: StateKey;
  readonly round?: number;
}
/** Photographs taken with it, by the fingerprint of what the camera gave. */
interface Photographed {
  readonly photos?: readonly string[];
}

export type CarClaim =
  | (OnCar & {
      readonly type: 'start-car';
      readonly plan: string;
      readonly chassis: string;
      readonly colour?: string;
      readonly options?: Readonly<Record<Key, string>>;
    })
  | (OnCar & { readonly type: 'choose-option'; readonly option: Key; readonly choice: string })
  /** Who comes and who goes, and not the whole list: two leads at once do not undo each other. */
  | (OnCar & {
      readonly type: 'assign';
      readonly job: string;
      readonly add?: readonly PersonId[];
      readonly remove?: readonly PersonId[];
    })
  | (OnCar & Photographed & { readonly type: 'add-note'; readonly of: string; readonly text: string })
  | (OnCar & {
      readonly type: 'add-photo';
      readonly of: string;
      readonly slot: string;
      readonly hash: string;
    })
  | (OnOperation & { readonly type: 'start-operation' })
  | (OnOperation & { readonly type: 'join-operation' })
  | (OnOperation & Photographed & { readonly type: 'pause-operation'; readonly leftAs?: string })
  | (OnOperation & { readonly type: 'leave-operation'; readonly leftAs?: string })
  | (OnOperation & { readonly type: 'resume-operation' })
  | (OnOperation & { readonly type: 'take-over-operation' })
  /** `lots`: which lots what it used up came from. */
  | (OnOperation & Photographed & { readonly type: 'finish-operation'; readonly lots?: readonly UsedLot[] })
  | (OnJoint & Photographed & { readonly type: 'snug-joint'; readonly hardware?: readonly FittedClaim[] })
  | (OnJoint &
      TorqueEvidence &
      Photographed & { readonly type: 'final-joint'; readonly hardware?: readonly FittedClaim[] })
  | (OnJoint &
      Photographed & { readonly type: 'verify-joint'; readonly method: VerifyMethod; readonly tool?: ToolId })
  | (OnJoint & Photographed & { readonly type: 'reject-joint'; readonly reason: string })
  | (OnJoint & Photographed & { readonly type: 'recheck-joint'; readonly tool?: ToolId })
  | (OnJoint & {
      readonly type: 'open-joint';
      readonly fasteners?: readonly number[];
      readonly reason?: string;
    })
  | (OnJoint &
      Photographed & {
        readonly type: 'report-disturbed';
        readonly cause: 'stripe-broken' | 'moved';
        readonly fasteners?: readonly number[];
      })
  | (OnJoint & {
      readonly type: 'report-over-torque';
      readonly fastener: number;
      readonly reading: string;
      readonly unit: Unit;
      readonly tool?: ToolId;
      readonly adapter?: string;
    })
  | (OnCheck & { readonly type: 'begin-check' })
  | (OnCheck &
      Photographed & {
        readonly type: 'pass-check';
        readonly values?: Readonly<Record<string, string>>;
        readonly tool?: ToolId;
      })
  | (OnCheck &
      Photographed & {
        readonly type: 'fail-check';
        readonly values?: Readonly<Record<string, string>>;
        readonly reason: string;
      })
  | (OnCar & {
      readonly type: 'place-stopgap';
      readonly stopgap?: Key;
      readonly what?: string;
      readonly quantity?: number;
      readonly where?: string;
      readonly slaveIn?: readonly StateKey[];
      readonly outBy?: Key;
    })
  | (OnCar & { readonly type: 'remove-stopgap'; readonly stopgap: string; readonly quantity?: number })
  | (OnCar & { readonly type: 'set-condition'; readonly condition: Key; readonly reason: string })
  | (OnCar & { readonly type: 'clear-condition'; readonly condition: Key; readonly reason: string })
  | ReceivePart
  | (OnCar & { readonly type: 'fit-part'; readonly part: Key })
  | (OnCar & {
      readonly type: 'take-part';
      readonly part: Key;
      readonly reason: string;
      readonly takenFor?: CarId;
    })
  | (OnCar &
      Photographed & {
        readonly type: 'report-finding';
        readonly about: { readonly kind: 'part' | 'joint' | 'check' | 'place'; readonly key: string };
        readonly text: string;
      })
  | (OnCar & {
      readonly type: 'decide-finding';
      readonly finding: string;
      readonly disposition: Disposition;
      readonly reason: string;
    })
  | (OnCar & { readonly type: 'close-finding'; readonly finding: string; readonly text?: string })
  | (OnCar & { readonly type: 'ask-change'; readonly wait: StateKey; readonly reason: string })
  | (OnCar & {
      readonly type: 'decide-change';
      readonly change: string;
      readonly approve: boolean;
      readonly reason?: string;
    })
  | (OnCar & {
      readonly type: 'place-hold';
      readonly scope: HoldScope;
      readonly things?: readonly string[];
      readonly reason: string;
    })
  | (OnCar & { readonly type: 'release-hold'; readonly hold: string; readonly reason?: string })
  | (OnCar & { readonly type: 'strike-signature'; readonly signature: string; readonly reason: string })
  | (OnCar & { readonly type: 'advance-car'; readonly to: Key })
  | (OnCar & { readonly type: 'send-back'; readonly to: Key; readonly reason: string })
  | (OnCar & { readonly type: 'deliver-car' })
  | KitClaim
  | ComponentClaim
  | RecordDonor;

/** The claim of one type. */
export type ClaimOf<Type extends ClaimType> = Extract<Claim, { readonly type: Type }>;
