/**
 * Every reason the shop may say "not yet" or "no": a code and its details, as plain data.
 * The docstring of each says who meets it; `sentences.ts` says what is wrong and what clears it.
 */
import type {
  CarId,
  Day,
  Disposition,
  Instant,
  Key,
  Level,
  LotId,
  MarkLevel,
  PersonId,
  StateKey,
  ToolId,
} from './vocabulary';

export interface RefusalDetails {
  // --- requirements that are not met yet ---
  /** Something waits for an operation that is not finished. */
  'operation-unfinished': { operation: StateKey; status: 'not started' | 'running' | 'paused' | 'due again' };
  /** A joint has not come far enough. */
  'joint-below-level': { joint: StateKey; level: Level; wanted: MarkLevel };
  /** A joint has its level and there is a reason not to believe it. */
  'joint-in-doubt': { joint: StateKey; cause: string; remedy: string; because: string };
  /** An operation's body asks that the joint be opened, rechecked or torqued again in this very run. */
  'joint-work-missing': { joint: StateKey; work: 'open' | 'recheck' | 'retorque' };
  /** A failed one waits for its finding to be decided, or for the work, or for the change that was asked instead. */
  'check-not-clear': {
    check: StateKey;
    status: 'not done' | 'failed' | 'failed, decided' | 'failed, change asked' | 'due again' | 'running';
  };
  'stopgap-in-place': { stopgap: string; left: number; placed: number; what: string };
  'condition-not-true': { condition: Key };
  'condition-true': { condition: Key };
  'wait-running': { operation: StateKey; until: Instant | null };
  'part-absent': { part: Key };
  /** Out of the house, or back and not looked over: it does not count as here. */
  'part-away': { part: Key; trip: string; due: Day | null; isBack: boolean };
  /** Graded reuse: the plan asks for a look before it counts as here. */
  'part-not-looked-over': { part: Key };
  'part-not-fitted': { part: Key };
  'photo-missing': { of: StateKey; slot: string };
  'option-undecided': { option: Key; choices: readonly string[] };
  'finding-undecided': { finding: string; about: string };
  'finding-not-closed': { finding: string; about: string; disposition: Disposition };
  'change-undecided': { change: string };
  'part-owed': { part: Key; takenFor: string };

  // --- who may do it ---
  /** A claim names something that isn't there; also the only refusal, but authority, that a warning can meet. */
  'unknown-thing': { what: string; key: string };
  'not-allowed': { act: string; says: string; roles: readonly string[]; actor: PersonId };
  'unknown-person': { person: string };
  'not-qualified': { person: PersonId; qualification: string; day: Day };
  'not-independent': { person: PersonId; joint: StateKey };
  'approver-not-independent': { person: PersonId; change: string };
  'strike-needs-lead': { signature: string; actor: PersonId };
  /** Met by whoever removes the only owner, or takes that role from them: nobody could let anybody in any more. */
  'last-owner': { person: PersonId };

  // --- where the work stands ---
  'stage-not-reached': { operation: StateKey; stage: Key; standsIn: Key };
  'hold-stands': { hold: string; scope: string; reason: string };
  'operation-not-running': { operation: StateKey };
  'operation-already-running': { operation: StateKey };
  'operation-already-finished': { operation: StateKey };
  'already-on-it': { operation: StateKey; person: PersonId };
  'not-on-it': { operation: StateKey; person: PersonId };
  /** Design 6: a person has one running clock, on whichever car. */
  'clock-running': { person: PersonId; car: CarId; operation: StateKey };
  'crew-too-small': { operation: StateKey; crew: number; present: number };
  /** D17: an act on a joint needs running work that names it. */
  'no-work-names-joint': {
    joint: StateKey;
    act: 'snug' | 'final' | 'recheck';
    operations: readonly StateKey[];
  };
  'stale-cycle': { joint: StateKey; named: number; current: number };
  'stale-run': { operation: StateKey; named: number; current: number };
  'stale-round': { check: StateKey; named: number; current: number };
  'level-already': { joint: StateKey; level: Level };
  'joint-not-final': { joint: StateKey; level: Level };
  'nothing-to-recheck': { joint: StateKey };
  'doubt-needs-more': { joint: StateKey; remedy: string; because: string };
  'slave-part-in-joint': { joint: StateKey; stopgap: string };
  'check-already-clear': { check: StateKey };
  'check-not-begun': { check: StateKey };
  'check-too-short': { check: StateKey; ready: Instant };
  'value-missing': { check: StateKey; value: string; limit: string };
  'value-unreadable': { field: string; text: string; wanted: string };
  'removed-more-than-placed': { stopgap: string; left: number; removed: number };
  'condition-set-by-work': { condition: Key; operations: readonly StateKey[] };
  'condition-already': { condition: Key; value: boolean };
  'part-not-taken-into-work': { part: Key; operations: readonly StateKey[] };
  'part-already': { part: Key; state: string };
  'finding-on-part': { finding: string; part: string };
  'finding-already': { finding: string; state: string };
  'never-concede': { check: StateKey };
  'change-already': { change: string; state: string };
  'hold-already-released': { hold: string };
  'option-already-chosen': { option: Key; choice: string };
  'choice-unknown': { option: Key; choice: string; choices: readonly string[] };
  'already-there': { what: string; key: string };

  // --- torque evidence ---
  /** The plan has no number yet: the joint may be snug, not final. */
  'no-value-yet': { joint: StateKey };
  'method-does-not-fit': { joint: StateKey; method: string; given: string };
  'tool-missing': { joint: StateKey; method: string };
  'tool-does-not-fit': { tool: ToolId; kind: string; joint: StateKey; method: string };
  'tool-out-of-calibration': { tool: ToolId; due: Day | null; day: Day };
  'tool-cycles-used-up': { tool: ToolId; cycles: number };
  'tool-suspect': { tool: ToolId; reason: string; from: Instant };
  'setting-outside-tool-range': { tool: ToolId; value: string; range: string };
  'adapter-length-unknown': { tool: ToolId; adapter: string };
  'reading-below': { joint: StateKey; fastener: number; delivered: string; window: string };
  /** D24: it is stored as a warning of its own, and the fastener renewed. */
  'reading-above': { joint: StateKey; fastener: number; delivered: string; window: string };
  'unit-doubtful': { joint: StateKey; value: string; unit: string; plausible: string };
  'unit-does-not-fit': { unit: string; wanted: string };
  'passes-missing': { joint: StateKey; wanted: number; given: number };
  'pattern-not-followed': {
    joint: StateKey;
    pass: number;
    wanted: readonly number[];
    given: readonly number[];
  };
  'readings-missing': { joint: StateKey; what: string; wanted: number; given: number };
  'step-missing': { joint: StateKey; step: string };
  'step-outside': { joint: StateKey; step: string; value: string; window: string };
  'verify-method-differs': { joint: StateKey; wanted: string; given: string };

  // --- hardware ---
  'hardware-wrong': { joint: StateKey; item: Key; planned: readonly Key[]; substitutes: readonly Key[] };
  'substitute-needs-lead': { joint: StateKey; item: Key; instead: Key };
  'hardware-spent': { joint: StateKey; item: Key; fastener: number | null; rule: string };
  'lot-quarantined': { lot: LotId; item: Key; reason: string };
  'lot-expired': { lot: LotId; item: Key; expired: Day };
  'lot-of-other-item': { lot: LotId; item: Key; holds: Key };
  /** It came off the donor of that car, and nobody has shared it. */
  'lot-of-other-car': { lot: LotId; item: Key; car: CarId };
  /** What came off a donor was fitted before. `joint`: where it was to go; null = it was to be kept. */
  'must-be-new': { item: Key; rule: string; joint: StateKey | null };
  'lot-not-quarantined': { lot: LotId };

  // --- moving the car ---
  /** The one soft refusal: the lead may override it with a reason. */
  'room-full': { stage: Key; capacity: number; cars: readonly CarId[] };
  'last-gate': { stage: Key };
  'not-last-gate': { stage: Key; last: Key };
  'one-stage-at-a-time': { from: Key; to: Key; next: Key };
  'car-delivered': { car: CarId };

  // --- buying ---
  'size-unreadable': { text: string; says: string };
  /** What a plan says of its item is the plan's to change. */
  'plan-says': { item: Key; field: string; planned: string };
  'comes-with-itself': { item: Key };
  'no-order-day': { supplier: string };
  'steps-out-of-order': { of: string; what: string };
  'weight-missing': { supplier: string; item: Key };
  'offer-ended': { offer: string };
  /** Twice in one file. */
  'given-before': { what: string; key: string };
  'pin-empty': { item: Key };
  'not-offered': { item: Key; supplier: string };
  /** Money here is in its smallest unit. */
  'price-changed': { item: Key; supplier: string; pack: string; seen: number; now: number };
  'freight-changed': { supplier: string; seen: number; now: number };
  /** Met by whoever approves what somebody else approved meanwhile, or they themselves in another window. */
  'ordered-since': { order: string };
  'order-day-past': { supplier: string; day: Day };
  'too-few-packs': { item: Key; packs: number; fewest: number };
  'order-too-small': { supplier: string; goods: number; least: number };
  'nothing-came': { order: string };
  'nothing-outstanding': { order: string; item: Key };
  /** More deposit is said to come back than was paid. Money is in its smallest unit. */
  'deposit-not-owed': { order: string; money: number; open: number };

  // --- at the saw; lengths carry their unit ---
  /** Met by whoever says “sawn” after somebody else did, or after the rack was counted. */
  'rest-not-there': { item: Key; length: string };
  'bar-too-short': { item: Key; length: string; pieces: string };
  /** More is said to be sawn than any work of the car still wants. */
  'cut-not-wanted': { item: Key; car: CarId; piece: string; length: string; count: number; left: number };
  'not-sawn': { item: Key; car: CarId; piece: string; length: string; count: number; sawn: number };

  // --- components and outside work ---
  'part-not-away': { part: Key; trip: string };
  /** The incoming check asks what was looked at. `isBack`: from outside work; else off the donor. */
  'look-not-said': { part: Key; isBack: boolean };
  /** A part is in one place: the car that it comes from gives it up first. */
  'part-not-given': { part: Key; from: CarId; car: CarId };
  'item-not-this-part': { part: Key; item: Key };
  'back-before-gone': { trip: string; goes: Day; due: Day };
}

export type RefusalCode = keyof RefusalDetails;

/** One reason, with what stands under it where one line covers several (an operation's joints and checks). */
export type Refusal = {
  [Code in RefusalCode]: {
    readonly code: Code;
    readonly details: Readonly<RefusalDetails[Code]>;
    readonly soft?: true;
    readonly under?: readonly Refusal[];
    /** Where in a file that was read in. */
    readonly place?: FilePlace;
  };
}[RefusalCode];

export interface FilePlace {
  readonly row: number;
  readonly column: string;
}

interface Extra {
  readonly soft?: true;
  readonly under?: readonly Refusal[];
  readonly place?: FilePlace;
}

/** Makes a refusal of the right shape for its code. */
export const refuse = <Code extends RefusalCode>(
  code: Code,
  details: RefusalDetails[Code],
  extra?: Extra,
): Refusal =>
  // TypeScript can't see that code and details belong together once Code is generic.
  (extra === undefined ? { code, details } : { code, details, ...extra }) as Refusal;
