/**
 * The one place where a refusal becomes words: what is wrong, and what clears it. Exhaustive by type: a code
 * without a sentence does not compile. Plain data in, so a screen may as well show the details its own way.
 */
import type { Refusal, RefusalCode } from './refusals';
import { moveSentences } from './sentences-moves';
import { requirementSentences } from './sentences-requirements';
import { torqueSentences } from './sentences-torque';
import { workSentences } from './sentences-work';
import type { Called, NameOf, Sentences, Who } from './words';

export type { NameOf };

const SENTENCES: Sentences<RefusalCode> = {
  ...requirementSentences,
  ...workSentences,
  ...torqueSentences,
  ...moveSentences,
};

/** One refusal in words. What stands under it is not said here: it has sentences of its own. */
export const sentence = (refusal: Refusal, nameOf: NameOf): string => {
  const called: Called = (key) => {
    const name = nameOf(key);
    return name === null ? key : `${key} (${name})`;
  };
  // Code and details belong together by the type of Refusal; a lookup by code can't show that to the compiler.
  const say = SENTENCES[refusal.code] as (details: Refusal['details'], called: Called, who: Who) => string;
  return say(refusal.details, called, (person) => nameOf(person) ?? person);
};
