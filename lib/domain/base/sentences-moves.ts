/** Words for moving a car. */
import { all } from './words';
import type { Sentences } from './words';

type Code = 'room-full' | 'last-gate' | 'not-last-gate' | 'one-stage-at-a-time' | 'car-delivered';

export const moveSentences: Sentences<Code> = {
  'room-full': ({ stage, capacity, cars }, called) =>
    `${called(stage)} has room for ${String(capacity)}, and ${all(cars)} stand${cars.length === 1 ? 's' : ''} there. Move a car on, or the lead overrides this with a reason.`,
  'last-gate': ({ stage }, called) => `${called(stage)} is the last stage. It is left by delivering the car.`,
  'not-last-gate': ({ stage, last }, called) =>
    `The car stands in ${called(stage)}. It is delivered from ${called(last)}.`,
  'one-stage-at-a-time': ({ from, to, next }, called) =>
    `From ${called(from)} the car goes to ${called(next)}, not to ${called(to)}. Move it one stage at a time.`,
  'car-delivered': ({ car }) =>
    `${car} is delivered already. What is done to it now is recorded all the same.`,
};
