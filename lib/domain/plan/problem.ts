/** What can be wrong with a plan: a code, where it stands, and the words its sentence needs. */

/** An error can't be built, a gap will block a car later, a hint is worth a look. */
export type Rank = 'error' | 'gap' | 'hint';

/** Keys and list numbers from the top of the document down to the text that is meant. */
export type ProblemPath = readonly (string | number)[];

/** Single texts and what they name. */
const TEXT_RANKS = {
  // --- texts with a notation of their own ---
  'stages-missing': 'error',
  'key-unreadable': 'error',
  'need-unreadable': 'error',
  'body-unreadable': 'error',
  'reference-unreadable': 'error',
  'when-unreadable': 'error',
  'specification-unreadable': 'error',
  'window-unreadable': 'error',
  'limit-unreadable': 'error',
  'duration-unreadable': 'error',
  'reuse-unreadable': 'error',
  'repeat-unusable': 'error',
  'length-unreadable': 'error',
  'pieces-unreadable': 'error',

  // --- what names what ---
  'key-used-twice': 'error',
  'reference-dangling': 'error',
  'reference-wrong-kind': 'error',
  'need-incomplete': 'error',
  'photo-unknown': 'error',
  'option-unknown': 'error',
  'choice-unknown': 'error',
  'usual-not-a-choice': 'error',
  'position-unknown': 'error',
  'position-unsettled': 'error',
} as const satisfies Readonly<Record<string, Rank>>;

/** What the elements say to each other. */
const WORK_RANKS = {
  // --- the order of work ---
  cycle: 'error',
  'need-never-in-time': 'error',
  /** A gap, not an error: the needed work may be done ahead of its stage, but the gate waits until somebody does. */
  'need-of-later-stage': 'gap',
  'due-before-stage': 'error',
  'wait-without-time': 'hint',
  'condition-never-set': 'gap',
  'cleared-for-good': 'error',
  'irreversible-unmeasured': 'hint',

  // --- stopgaps ---
  'stopgap-never-out': 'gap',
  'stopgap-never-placed': 'gap',
  'stopgap-out-before-placed': 'error',
  'stopgap-out-late': 'error',

  // --- joints ---
  'pattern-not-each-once': 'error',
  'torque-missing': 'error',
  'torque-unit': 'error',
  'torque-without-source': 'error',
  'no-value-yet': 'gap',
  'firm-with-value': 'error',
  'no-value-not-firm': 'error',
  'angle-missing': 'error',
  'angle-unit': 'error',
  'sequence-missing': 'error',
  'joint-not-worked': 'gap',
  'joint-never-there': 'gap',
  'critical-without-verify': 'gap',
  'verified-without-verify': 'gap',
  'hardware-uneven': 'hint',

  // --- checks ---
  'check-not-worked': 'gap',
  'check-in-several': 'hint',
  'limit-without-source': 'hint',
} as const satisfies Readonly<Record<string, Rank>>;

/** Pieces against the lengths they are cut from. */
const CUTTING_RANKS = {
  'pieces-without-lengths': 'gap',
  'piece-too-long': 'error',
  'pieces-against-quantity': 'hint',
  'pieces-without-quantity': 'hint',
} as const satisfies Readonly<Record<string, Rank>>;

export type TextCode = keyof typeof TEXT_RANKS;
export type WorkCode = keyof typeof WORK_RANKS;
export type CuttingCode = keyof typeof CUTTING_RANKS;
export type ProblemCode = TextCode | WorkCode | CuttingCode;

const RANKS: Readonly<Record<ProblemCode, Rank>> = { ...TEXT_RANKS, ...WORK_RANKS, ...CUTTING_RANKS };

export interface Problem {
  readonly rank: Rank;
  readonly code: ProblemCode;
  readonly path: ProblemPath;
  readonly details: Readonly<Record<string, string>>;
  /** The last word of the path is itself what is wrong, not what stands under it. */
  readonly onKey?: true;
}

/** A problem with the rank that its code has, unless the case is milder. */
export const problem = (
  code: ProblemCode,
  path: ProblemPath,
  details: Readonly<Record<string, string>> = {},
  special: { readonly rank?: Rank; readonly onKey?: boolean } = {},
): Problem => ({
  rank: special.rank ?? RANKS[code],
  code,
  path,
  details,
  ...(special.onKey === true ? { onKey: true } : {}),
});
