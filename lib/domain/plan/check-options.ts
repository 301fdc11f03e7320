/** Which elements can stand on one car together, whatever options are chosen. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from './document';
import { optionsOf, parseWhen } from './notation';
import { applies } from './resolve';

export type Chosen = Readonly<Record<Key, string>>;

/** More than this many ways to choose are not tried one by one. */
const MOST = 1024;

/** On the car under these choices? An option that the plan doesn't offer can't switch anything off. */
export const isOn = (when: string | undefined, chosen: Chosen): boolean => {
  const answer = applies(when, chosen);
  return 'undecided' in answer || answer.on;
};

/** Every way to choose the options that these texts ask about, at most the first 1024. */
export const waysToChoose = (
  whens: readonly (string | undefined)[],
  document: Pick<PlanDocument, 'options'>,
): readonly Chosen[] => {
  const asked = new Set(whens.flatMap((when) => optionsAsked(when)));
  let ways: readonly Chosen[] = [{}];
  for (const [option, { choices }] of Object.entries(document.options ?? {})) {
    if (!asked.has(option) || choices.length === 0) continue;
    const room = Math.floor(MOST / ways.length);
    ways = ways.flatMap((way) =>
      choices.slice(0, Math.max(1, room)).map((choice) => ({ ...way, [option]: choice })),
    );
  }
  return ways;
};

const optionsAsked = (when: string | undefined): readonly Key[] => {
  const expression = when === undefined ? null : parseWhen(when);
  return expression === null ? [] : optionsOf(expression);
};

/** Can one car have all of these? */
export const canStandTogether = (
  whens: readonly (string | undefined)[],
  document: Pick<PlanDocument, 'options'>,
): boolean => {
  const asking = whens.filter((when) => when !== undefined);
  if (asking.length === 0) return true;
  return waysToChoose(asking, document).some((way) => asking.every((when) => isOn(when, way)));
};
