/** One line of a day, as `slipmark replay` reads it. */
import type { GivenLine } from './driver';

export const lineText = ({ now, by, command, device, lastContact, refused }: GivenLine): string => {
  const { claim, id, doneAt } = command;
  const heard = device === undefined ? {} : { device, lastContact };
  const expect = refused === undefined ? {} : { expect: refused };
  return JSON.stringify({ now, by, ...heard, command: { ...claim, id, doneAt }, ...expect });
};

/** What one plan alone can answer, which is all that `replay` is given: the lines of cars on another one are left out. */
export const linesOnPlan = (lines: readonly GivenLine[], plan: string): readonly GivenLine[] => {
  const others = new Set(
    lines.flatMap(({ command: { claim } }) =>
      claim.type === 'start-car' && claim.plan !== plan ? [claim.car] : [],
    ),
  );
  return lines.filter(({ command: { claim } }) =>
    'car' in claim ? !others.has(claim.car) : claim.type !== 'release-plan' || claim.plan === plan,
  );
};
