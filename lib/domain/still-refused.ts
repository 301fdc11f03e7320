/**
 * A refusal that somebody still has before them, while the car goes on: which of its reasons stand, and which are
 * cleared. Only reasons about how the car and the shop stand can be followed; what lay in the claim or in the person
 * (a reading, a tool, a qualification) is cleared by giving it otherwise, and stays until then.
 */
import { BODY, GATE, START } from './base/refusal-groups';
import type { Refusal, RefusalCode } from './base/refusals';

const OF_STATE: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  ...START.filter((code) => code !== 'not-qualified'),
  ...BODY,
  ...GATE,
  'part-owed',
  'operation-not-running',
  'operation-already-running',
  'operation-already-finished',
  'clock-running',
  'crew-too-small',
  'no-work-names-joint',
  'level-already',
  'joint-not-final',
  'nothing-to-recheck',
  'doubt-needs-more',
  'slave-part-in-joint',
  'check-already-clear',
  'check-not-begun',
  'check-too-short',
  'condition-set-by-work',
  'part-not-taken-into-work',
  'part-already',
  'finding-already',
  'change-already',
  'hold-already-released',
  'option-already-chosen',
  'room-full',
]);

/** Whether it hangs on how things stand, and not on what was claimed or by whom. */
export const isOfState = ({ code }: Refusal): boolean => OF_STATE.has(code);

/** What a detail says about its state; all others name the thing. */
const CHANGING: ReadonlySet<string> = new Set([
  'level',
  'status',
  'state',
  'left',
  'placed',
  'until',
  'ready',
  'because',
  'cause',
  'present',
  'standsIn',
  'cars',
  'isBack',
  'trip',
  'due',
  'disposition',
  'operations',
]);

/** The same reason about the same thing has the same text, however far the thing has come since. */
export const reasonKey = ({ code, details }: Refusal): string =>
  JSON.stringify([code, Object.entries(details).filter(([name]) => !CHANGING.has(name))]);

interface Said {
  readonly refusal: Refusal;
}

interface Following<Each extends Said> {
  /** What the answer said. */
  readonly said: readonly Each[];
  /** What the rules say now to the plainest claim of the same act. */
  readonly now: readonly Each[];
  /** `reasonKey` of everything that `now` has said since the answer. */
  readonly seen: ReadonlySet<string>;
}

interface Followed<Each extends Said> {
  readonly standing: readonly Each[];
  readonly cleared: readonly Each[];
}

/**
 * What stands of a refusal, as it is worded now, with what has come to it since. A reason is cleared only once the
 * rules have been heard to say it and no longer do: what they never said, they were not asked.
 */
export const stillRefused = <Each extends Said>({ said, now, seen }: Following<Each>): Followed<Each> => {
  const current = new Map(now.map((each) => [reasonKey(each.refusal), each]));
  const keys = new Set(said.map((each) => reasonKey(each.refusal)));
  const isCleared = (each: Each): boolean => {
    const key = reasonKey(each.refusal);
    return seen.has(key) && !current.has(key);
  };
  return {
    standing: [
      ...said.filter((each) => !isCleared(each)).map((each) => current.get(reasonKey(each.refusal)) ?? each),
      ...now.filter((each) => isOfState(each.refusal) && !keys.has(reasonKey(each.refusal))),
    ],
    cleared: said.filter(isCleared),
  };
};
