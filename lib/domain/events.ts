/**
 * What happened. Every consequence is an event of its own and carries the values that it was decided with, so that
 * `evolve` needs no plan and an old log still tells what was true then. `v` is the shape's version; see `upcast.ts`.
 */
import type { CarId, Disposition, HoldScope, Key, PersonId, StateKey, ToolId } from './base/vocabulary';
import type { Meta, PhotoAdded, Signed } from './event-meta';
import type { Doubt, FittedItem, Mark, RunRef } from './car/joint-rows';
import type { Edit } from './car/rows';
import type { ComponentPayload, DonorRecorded } from './component-payload';
import type { KitPayload } from './kit-payload';
import type { ShopPayload } from './shop-payload';
import type { Drawn } from './shop/stock';

export type CarPayload =
  | {
      readonly type: 'car-started';
      readonly chassis: string;
      readonly colour: string | null;
      readonly plan: string;
      readonly options: Readonly<Record<Key, string>>;
    }
  | { readonly type: 'option-chosen'; readonly option: Key; readonly choice: string }
  | { readonly type: 'job-assigned'; readonly job: string; readonly people: readonly PersonId[] }
  | { readonly type: 'note-added'; readonly of: string; readonly text: string }
  | PhotoAdded
  | { readonly type: 'operation-started'; readonly operation: StateKey; readonly run: number }
  | { readonly type: 'operation-joined'; readonly operation: StateKey; readonly run: number }
  | {
      readonly type: 'operation-paused';
      readonly operation: StateKey;
      readonly run: number;
      readonly leftAs: string | null;
    }
  /** One of several stepped out: the work goes on without them. */
  | {
      readonly type: 'operation-left';
      readonly operation: StateKey;
      readonly run: number;
      readonly leftAs: string | null;
    }
  | {
      readonly type: 'operation-resumed';
      readonly operation: StateKey;
      readonly run: number;
      readonly takenOver: boolean;
    }
  | {
      readonly type: 'operation-finished';
      readonly operation: StateKey;
      readonly run: number;
      readonly waitMs: number;
      /** The stock half: what the work used up. Absent in logs from before stock was kept. */
      readonly drawn?: readonly Drawn[];
      readonly signed: Signed;
    }
  | {
      readonly type: 'operation-due-again';
      readonly operation: StateKey;
      readonly run: number;
      readonly because: string;
    }
  | {
      readonly type: 'hardware-fitted';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly fasteners: Readonly<Record<string, Readonly<Record<Key, FittedItem>>>>;
      /** The stock half: what went in new. Absent in logs from before stock was kept. */
      readonly drawn?: readonly Drawn[];
      /** The operation out of whose box it may have come. Absent where there was none. */
      readonly kit?: StateKey;
    }
  | {
      readonly type: 'joint-marked';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly mark: Mark;
      readonly doubtsLeft: readonly Doubt[];
      readonly evidence: Readonly<Record<string, unknown>> | null;
      /** The shop's half: how often the tool was used, where the shop counts its cycles. Additive. */
      readonly toolUse: { readonly tool: ToolId; readonly cycles: number } | null;
      readonly signed: Signed;
    }
  | {
      readonly type: 'joint-rechecked';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly tool: ToolId | null;
      readonly run: RunRef | null;
      readonly cleared: readonly Doubt[];
      readonly doubtsLeft: readonly Doubt[];
      readonly signed: Signed;
    }
  | {
      readonly type: 'joint-opened';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly fasteners: readonly number[];
      readonly was: string;
      readonly run: RunRef | null;
      readonly spent: Readonly<Record<string, readonly Key[]>>;
      readonly reason: string | null;
      readonly namedCycle: number | null;
    }
  | {
      readonly type: 'joint-doubted';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly doubt: Doubt;
    }
  | {
      readonly type: 'joint-over-torqued';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly fastener: number;
      readonly reading: string;
      readonly unit: string;
      readonly delivered: string | null;
      readonly tool: ToolId | null;
    }
  | { readonly type: 'check-begun'; readonly check: StateKey; readonly round: number }
  | {
      readonly type: 'check-passed';
      readonly check: StateKey;
      readonly round: number;
      readonly values: Readonly<Record<string, string>>;
      readonly tool: ToolId | null;
      readonly signed: Signed;
    }
  | {
      readonly type: 'check-failed';
      readonly check: StateKey;
      readonly round: number;
      readonly values: Readonly<Record<string, string>>;
      readonly reason: string;
      readonly finding: string;
    }
  | {
      readonly type: 'check-due-again';
      readonly check: StateKey;
      readonly round: number;
      readonly because: string;
    }
  | {
      readonly type: 'check-conceded';
      readonly check: StateKey;
      readonly round: number;
      readonly change: string;
    }
  | {
      readonly type: 'stopgap-placed';
      readonly id: string;
      readonly stopgap: Key | null;
      readonly what: string;
      readonly quantity: number;
      readonly outBy: number;
      readonly slaveIn: readonly StateKey[];
      readonly where: string | null;
    }
  | {
      readonly type: 'stopgap-removed';
      readonly id: string;
      readonly quantity: number;
      readonly signed: Signed;
    }
  /** The removal's signature was struck: they count as in again. */
  | {
      readonly type: 'stopgap-returned';
      readonly id: string;
      readonly quantity: number;
      readonly signature: string;
    }
  | {
      readonly type: 'condition-set';
      readonly condition: Key;
      readonly run: RunRef | null;
      readonly because: string;
    }
  | {
      readonly type: 'condition-cleared';
      readonly condition: Key;
      readonly run: RunRef | null;
      readonly because: string;
    }
  | { readonly type: 'part-fitted'; readonly part: Key; readonly run: RunRef | null; readonly signed: Signed }
  | { readonly type: 'part-unfitted'; readonly part: Key }
  | {
      readonly type: 'part-taken';
      readonly part: Key;
      readonly takenFor: string | null;
      readonly reason: string;
    }
  | { readonly type: 'part-condemned'; readonly part: Key; readonly piece: number; readonly finding: string }
  | {
      readonly type: 'finding-opened';
      readonly finding: string;
      readonly about: { readonly kind: 'part' | 'joint' | 'check' | 'place'; readonly key: string };
      readonly text: string;
      readonly check: { readonly key: StateKey; readonly round: number } | null;
      /** The tightening of the joint that it is about. */
      readonly cycle: number | null;
      readonly due: number;
      readonly workDue: number;
      readonly critical: boolean;
    }
  | {
      readonly type: 'finding-decided';
      readonly finding: string;
      readonly disposition: Disposition;
      readonly change: string | null;
      readonly reason: string;
    }
  | { readonly type: 'finding-closed'; readonly finding: string; readonly because: string }
  | { readonly type: 'finding-reopened'; readonly finding: string; readonly because: string }
  | {
      readonly type: 'change-asked';
      readonly change: string;
      readonly edits: readonly Edit[];
      readonly reason: string;
      readonly due: number;
      readonly critical: boolean;
      readonly performers: readonly PersonId[];
    }
  | {
      readonly type: 'change-approved';
      readonly change: string;
      readonly owner: boolean;
      readonly complete: boolean;
    }
  | { readonly type: 'change-declined'; readonly change: string; readonly reason: string }
  | { readonly type: 'wait-ended'; readonly operation: StateKey; readonly change: string }
  | {
      readonly type: 'hold-placed';
      readonly hold: string;
      readonly scope: HoldScope;
      readonly things: readonly string[];
      readonly reason: string;
    }
  | { readonly type: 'hold-released'; readonly hold: string; readonly reason: string | null }
  | { readonly type: 'signature-struck'; readonly signature: string; readonly reason: string }
  | {
      readonly type: 'mark-struck';
      readonly joint: StateKey;
      readonly cycle: number;
      readonly signatures: readonly string[];
      readonly doubtsBack: readonly Doubt[];
    }
  | {
      readonly type: 'operation-reopened';
      readonly operation: StateKey;
      readonly run: number;
      /** Nobody is at it: it comes back paused, and why. Absent in logs from before: it came back running. */
      readonly leftAs?: string;
    }
  | {
      readonly type: 'gate-passed';
      readonly from: number;
      readonly to: number;
      readonly stage: Key;
      readonly overridden: readonly string[];
      readonly reason: string | null;
    }
  | {
      readonly type: 'car-sent-back';
      readonly from: number;
      readonly to: number;
      readonly stages: readonly Key[];
      readonly reason: string;
    }
  | { readonly type: 'car-delivered' }
  | KitPayload
  | ComponentPayload
  | DonorRecorded;

export type ShopEvent = ShopPayload & { readonly v: 1; readonly stream: 'shop'; readonly meta: Meta };
export type CarEvent = CarPayload & {
  readonly v: 1;
  readonly stream: 'car';
  readonly car: CarId;
  readonly meta: Meta;
};
export type Event = ShopEvent | CarEvent;
export type EventType = Event['type'];
