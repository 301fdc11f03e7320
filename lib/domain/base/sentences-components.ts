/** Words of refusals about components and outside work. */
import { numberOf } from './words';
import type { Sentences } from './words';

type ComponentCode =
  | 'part-away'
  | 'part-not-away'
  | 'part-not-looked-over'
  | 'look-not-said'
  | 'part-not-given'
  | 'item-not-this-part'
  | 'back-before-gone';

export const componentSentences: Sentences<ComponentCode> = {
  'part-away': ({ part, trip, due, isBack }, called) => {
    const { is, it } = numberOf(called(part));
    return isBack
      ? `${called(part)} ${is} back from trip ${trip} and nobody has looked ${it} over. Do that and receive ${it}.`
      : `${called(part)} ${is} out on trip ${trip}${due === null ? '' : `, due back ${due}`}. Count ${it} in when ${it === 'it' ? 'it comes' : 'they come'} back.`;
  },
  'part-not-away': ({ part, trip }, called) =>
    `${called(part)} ${numberOf(called(part)).is} not out on trip ${trip}, so nothing of ${numberOf(called(part)).it} can come back from there. Look at where the trip says it is.`,
  'part-not-looked-over': ({ part }, called) => {
    const { is, it } = numberOf(called(part));
    return `${called(part)} ${is} graded reuse and nobody has looked ${it} over since. Do that and receive ${it}.`;
  },
  'look-not-said': ({ part, isBack }, called) => {
    const { is, it } = numberOf(called(part));
    return isBack
      ? `${called(part)} ${is} back from outside work. Say what you looked at or measured, then receive ${it}.`
      : `${called(part)} ${is} graded reuse, and the plan asks for a look before ${it === 'it' ? 'it counts' : 'they count'} as here. Say what you looked at or measured, then receive ${it}.`;
  },
  'part-not-given': ({ part, from, car }, called) =>
    `${from} has not given up ${called(part)} for ${car}. Take ${numberOf(called(part)).it} off there first, for ${car}.`,
  'item-not-this-part': ({ part, item }, called) =>
    `${called(item)} is not what ${called(part)} ${numberOf(called(part)).is} bought as. Take the item of that part.`,
  'back-before-gone': ({ trip, goes, due }) =>
    `Trip ${trip} goes on ${goes} and can't be back on ${due}. Give a day that is not before it goes.`,
};
