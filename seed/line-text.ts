/** One line of a day, as `slipmark replay` reads it. */
import type { GivenLine } from './driver';

export const lineText = ({ now, by, command, refused }: GivenLine): string => {
  const { claim, id, doneAt } = command;
  const expect = refused === undefined ? {} : { expect: refused };
  return JSON.stringify({ now, by, command: { ...claim, id, doneAt }, ...expect });
};
