/**
 * The shop's closed word lists. One list serves the type, the loop and the parser.
 * Spelled as in the glossary of README.md.
 */

/** How far a joint has come. `open` holds nothing; `snug` is contact without a torque value. */
export const LEVELS = ['open', 'snug', 'final', 'verified'] as const;
export type Level = (typeof LEVELS)[number];
/** A level that somebody can sign for. */
export type MarkLevel = Exclude<Level, 'open'>;

/** How a joint is brought to final. */
export const METHODS = [
  'click',
  'dial',
  'beam',
  'digital',
  'prevailing',
  'angle',
  'sequence',
  'firm',
] as const;
export type Method = (typeof METHODS)[number];

/** What a second person does to verify: sees it done, re-applies with a tool, or sees stripe and hardware. */
export const VERIFY_METHODS = ['witnessed', 're-applied', 'seen'] as const;
export type VerifyMethod = (typeof VERIFY_METHODS)[number];

export const CHECK_KINDS = ['visual', 'measured', 'functional'] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

export const TOOL_KINDS = ['click', 'dial', 'beam', 'digital', 'angle', 'gauge'] as const;
export type ToolKind = (typeof TOOL_KINDS)[number];

/** When a piece of hardware is spent: at fitting, at final, after n fittings, or never. */
export type Reuse =
  | { readonly rule: 'once-fitted' }
  | { readonly rule: 'once-final' }
  | { readonly rule: 'times'; readonly times: number }
  | { readonly rule: 'always' };

export const DISPOSITIONS = ['rework', 'replace', 'repair-outside', 'scrap', 'misread', 'use-as-is'] as const;
export type Disposition = (typeof DISPOSITIONS)[number];

/** What puts a doubted joint right, weakest first: a stronger remedy also clears the weaker doubts. */
export const REMEDIES = ['recheck', 'retorque', 'renew'] as const;
export type Remedy = (typeof REMEDIES)[number];

export const DOUBT_CAUSES = [
  'neighbour-opened',
  'stripe-broken',
  'moved',
  'rejected',
  'load-changed',
  'specification-changed',
  'over-torque',
  'tool-suspect',
  'lot-quarantined',
] as const;
export type DoubtCause = (typeof DOUBT_CAUSES)[number];

export const HOLD_SCOPES = ['gate', 'work', 'things'] as const;
export type HoldScope = (typeof HOLD_SCOPES)[number];

export const ROLES = ['owner', 'lead', 'technician'] as const;
export type Role = (typeof ROLES)[number];

/** Three kinds of act: an assurance may be refused, a warning never for the state of things, a note neither way. */
export const COMMAND_KINDS = ['assurance', 'warning', 'note'] as const;
export type CommandKind = (typeof COMMAND_KINDS)[number];

export const SUSPECT_REASONS = ['dropped', 'lost', 'overdue', 'as-found', 'other'] as const;
export type SuspectReason = (typeof SUSPECT_REASONS)[number];

/** Is `level` at least `wanted`? Asked for every joint of every car, so it compares and looks nothing up. */
export const isAtLevel = (level: Level, wanted: Level): boolean => {
  if (level === wanted || wanted === 'open') return true;
  return wanted === 'snug' ? level !== 'open' : wanted === 'final' && level === 'verified';
};

/** A plan key (stage, operation, joint, check, stopgap, condition …). */
export type Key = string;
/** `key` or `key@position`: one thing on one car. */
export type StateKey = string;
/** ISO 8601 instant in UTC with milliseconds, as `Date.prototype.toISOString` writes it. */
export type Instant = string;
/** ISO calendar day in the shop's zone, `2026-11-25`. */
export type Day = string;
export type PersonId = string;
export type ToolId = string;
export type LotId = string;
export type CarId = string;
