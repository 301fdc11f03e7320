/** Joints that wait for a second person, and for each whether this person may be it. Pure: the rules are only asked. */
import type { Assessment } from '@/lib/domain/assess';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { doubtsOf, levelOf, standingFinal } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import { runningWork } from '@/lib/domain/car/work';
import { holdsNaming } from '@/lib/domain/decide/case';
import { jointCase } from '@/lib/domain/decide/joints';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { Facts } from '@/lib/domain/facts';
import type { CompiledJoint, CompiledPlan } from '@/lib/domain/plan/compiled';
import { peopleViews } from '@/lib/server/queries/sign-off/people-view';
import type { PersonView } from '@/lib/wire/views/sign-off';

interface OnFloor {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly assessment: Assessment;
}

export interface Eyes {
  readonly at: JointCase;
  /** `now`: final and waiting. `while`: to be seen while it is done, and it is being done. `doubted`: final, and not to be believed. */
  readonly stage: 'now' | 'while' | 'doubted';
  /** When it came to final; null where it has not. */
  readonly since: string | null;
  readonly by: PersonId | null;
  readonly tool: string | null;
  readonly people: readonly PersonView[];
  readonly mine: {
    readonly may: boolean;
    /** What about this person stands against it; null where something else does, or nothing. */
    readonly whyNot: string | null;
  };
}

export const eyesOn = (floor: readonly OnFloor[], facts: Facts, me: PersonId): readonly Eyes[] =>
  floor.flatMap(({ car, plan, assessment }) => {
    const waiting = new Set(assessment.jobs.flatMap(({ kind, key }) => (kind === 'verify' ? [key] : [])));
    return plan.all.joints.flatMap((joint): readonly Eyes[] => {
      const stage = stageOf(car, joint, facts, waiting);
      if (stage === null) return [];
      const at = jointCase({ command: '', facts, car, plan }, joint);
      const final = standingFinal(at.row);
      const people = peopleViews(at);
      const own = people.find(({ id }) => id === me);
      const whyNot = own === undefined ? 'is not on the shop’s books' : whyNotOf(own, stage);
      const isHeld = holdsNaming(at, joint.stateKey).length > 0;
      return [
        {
          at,
          stage,
          since: final?.at ?? null,
          by: final?.by ?? null,
          tool: final?.tool ?? null,
          people,
          mine: { may: whyNot === null && stage !== 'doubted' && !isHeld, whyNot },
        },
      ];
    });
  });

/** Who is on the work now will have had a hand in it. */
export const whyNotOf = (person: PersonView, stage: Eyes['stage']): string | null =>
  stage === 'while' ? person.whyNotVerifyAfter : person.whyNotVerify;

const stageOf = (
  car: Car,
  joint: CompiledJoint,
  facts: Facts,
  waiting: ReadonlySet<string>,
): Eyes['stage'] | null => {
  if (waiting.has(joint.stateKey)) return 'now';
  if (joint.dueLevel !== 'verified' || joint.undecided.length > 0) return null;
  const row = car.joints[joint.stateKey];
  const level = levelOf(row);
  if (level === 'final') return doubtsOf(row, facts).length > 0 ? 'doubted' : null;
  const isBeingDone = joint.verify === 'witnessed' && runningWork(car, joint, 'final') !== null;
  return level !== 'verified' && isBeingDone ? 'while' : null;
};
