/**
 * The one place where a refusal becomes words: what is wrong, and what clears it. Exhaustive by type: a code
 * without a sentence does not compile. Plain data in, so a screen may as well show the details its own way.
 */
import type { Refusal, RefusalCode } from './refusals';
import { componentSentences } from './sentences-components';
import { cuttingSentences } from './sentences-cutting';
import { moveSentences } from './sentences-moves';
import { requirementSentences } from './sentences-requirements';
import { supplySentences } from './sentences-supply';
import { torqueSentences } from './sentences-torque';
import { workSentences } from './sentences-work';
import { withPlace } from './words';
import type { Called, NameOf, Sentences, Who } from './words';

export type { NameOf };

const SENTENCES: Sentences<RefusalCode> = {
  ...requirementSentences,
  ...workSentences,
  ...torqueSentences,
  ...moveSentences,
  ...supplySentences,
  ...cuttingSentences,
  ...componentSentences,
};

/** One refusal in words. What stands under it is not said here: it has sentences of its own. */
export const sentence = (refusal: Refusal, nameOf: NameOf): string => {
  // As one says it, and the code behind: so that it can be shouted across the shop and found on the plan.
  const names: string[] = [];
  const called: Called = (key) => {
    const name = nameOf(key);
    if (name === null) return key;
    const whole = `${withPlace(key, name)} (${key})`;
    names.push(whole);
    return whole;
  };
  // Code and details belong together by the type of Refusal; a lookup by code can't show that to the compiler.
  const say = SENTENCES[refusal.code] as (details: Refusal['details'], called: Called, who: Who) => string;
  const said = say(refusal.details, called, (person) => nameOf(person) ?? person);
  // A plan may write `uprights`; a sentence that begins with them has its capital all the same.
  const whole = names.some((name) => said.startsWith(name))
    ? said.charAt(0).toUpperCase() + said.slice(1)
    : said;
  const { place } = refusal;
  return place === undefined ? whole : `Row ${String(place.row)}, ${place.column}: ${whole}`;
};
