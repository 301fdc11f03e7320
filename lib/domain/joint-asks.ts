/**
 * What a joint asks of whoever stands before it: the acts that it would take now, the one that comes next, and
 * whether anything is asked at all. What stands in the way of an act, and who may give it, is asked of its own rule.
 */
import type { RefusalCode } from './base/refusals';
import { isAtLevel } from './base/vocabulary';
import { levelOf, standingFinal } from './car/joint';
import type { RunRef } from './car/joint-rows';
import { runningWork } from './car/work';
import { recheck } from './decide/joint-eyes';
import { final, workFor } from './decide/joints';
import type { JointCase } from './decide/joints';

export type JointActName = 'snug' | 'final' | 'verify' | 'recheck';
/** `renew`: a doubt that only new hardware settles. `rest`: nothing is asked. */
export type JointAsk = JointActName | 'renew' | 'rest';

/** Which acts the joint asks for or allows now, apart from what stands in their way. */
export const offeredActs = (at: JointCase): Readonly<Record<JointActName, boolean>> => {
  const { joint, car, doubts } = at;
  const on = { car: car.id, joint: joint.stateKey };
  const toFinal = codesOf(final(at, { type: 'final-joint', ...on }));
  const toRecheck = codesOf(recheck(at, { type: 'recheck-joint', ...on }));
  const isValued = joint.specification.kind !== 'no-value-yet' || joint.method === 'sequence';
  const level = levelOf(at.row);
  return {
    snug: level === 'open',
    final: isValued && !toFinal.has('level-already') && !toFinal.has('doubt-needs-more'),
    verify: level === 'final' && takesVerifying(at) && doubts.length === 0,
    recheck:
      isAtLevel(level, 'final') && !toRecheck.has('nothing-to-recheck') && !toRecheck.has('doubt-needs-more'),
  };
};

const codesOf = ({
  refusals,
}: {
  readonly refusals: readonly { readonly code: RefusalCode }[];
}): ReadonlySet<RefusalCode> => new Set(refusals.map(({ code }) => code));

const takesVerifying = ({ joint }: JointCase): boolean =>
  joint.dueLevel === 'verified' || joint.verify !== null;

/** What comes next. A remedy goes before everything else, the stronger first. */
export const askOf = (at: JointCase, offered: Readonly<Record<JointActName, boolean>>): JointAsk => {
  const { row, doubts } = at;
  if (doubts.some(({ remedy }) => remedy === 'renew')) return 'renew';
  if (offered.recheck && (doubts.length > 0 || !isRecheckedInRun(at))) return 'recheck';
  const level = levelOf(row);
  const isFinal = isAtLevel(level, 'final');
  if (isFinal && offered.final && (doubts.length > 0 || !isFinalInRun(at))) return 'final';
  // A second person may look at any joint that says how; only one that is due verified asks for it.
  if (offered.verify && at.joint.dueLevel === 'verified') return 'verify';
  if (isFinal) return 'rest';
  if (level === 'open' && !(offered.final && isWorkedToFinal(at))) return 'snug';
  return offered.final ? 'final' : 'rest';
};

/** Is there anything to sign or to do, so that it matters at which car one stands? */
export const isAsked = (ask: JointAsk): boolean => ask !== 'rest';

const isWorkedToFinal = (at: JointCase): boolean => workFor(at, 'final').refusals.length === 0;

const isSameRun = (a: RunRef | null, b: RunRef | null): boolean =>
  a !== null && a.operation === b?.operation && a.run === b.run;

const isFinalInRun = (at: JointCase): boolean =>
  isSameRun(runningWork(at.car, at.joint, 'final'), standingFinal(at.row)?.run ?? null);

const isRecheckedInRun = (at: JointCase): boolean => {
  const run = runningWork(at.car, at.joint, 'recheck');
  return at.row.rechecks.some((each) => !each.struck && isSameRun(run, each.run));
};
