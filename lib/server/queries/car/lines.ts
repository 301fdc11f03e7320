/** Small words that rows share. */
import { withPlace } from '@/lib/domain/base/words';
import { sentence } from '@/lib/domain/base/sentences';
import type { Refusal } from '@/lib/domain/base/refusals';
import { planKey } from '@/lib/domain/plan/positions';
import type { DueMark } from '@/lib/wire/views/car';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import type { Seen } from './seen';

/**
 * A refusal under the bold name of its thing: the sentence goes on from there, so that the name is not said twice.
 * `J-212 (Steering box) is snug and must be …` under `J-212 Steering box` becomes `is snug and must be …`.
 */
export const saidUnder = ({ nameOf, spoken }: Seen, refusal: Refusal, key: string): string => {
  const own = planKey(key);
  const name = nameOf(key);
  // The verb behind a name goes with the name, so that the name is cut off and not left out.
  const whole = spoken(sentence(refusal, nameOf));
  const heading = name === null ? key : spoken(`${withPlace(key, name)} (${key})`);
  if (whole.toLowerCase().startsWith(heading.toLowerCase()))
    return whole.slice(heading.length).replace(/^[:,]?\s*/, '');
  return spoken(sentence(refusal, (each) => (planKey(each) === own ? null : nameOf(each))));
};

/** By which gate; what an earlier gate should have asked is asked by the next. Behind the last stage lies delivery. */
export const dueMark = ({ car, plan }: Pick<Seen, 'car' | 'plan'>, due: number | null): DueMark => {
  const last = plan.stages.length - 1;
  const at = Math.max(due ?? last, car.stage);
  return { text: at === last ? 'delivery' : `gate ${String(at + 1)}`, isNow: at === car.stage };
};

/** A refusal as a line with its place, in the shop's own times. */
export const lineOf = (
  { car, plan, facts, spoken }: Pick<Seen, 'car' | 'plan' | 'facts' | 'spoken'>,
  refusal: Refusal,
): RefusalLine => {
  const worded = (line: RefusalLine): RefusalLine => ({
    ...line,
    says: spoken(line.says),
    clears: spoken(line.clears),
    ...(line.under === undefined ? {} : { under: line.under.map(worded) }),
  });
  return worded(refusalLine(car.id, refusal, plan, facts.people));
};

/** What something waits for, each thing once: a plan may ask for it in two ways. */
export const waitLines = (seen: Seen, refusals: readonly Refusal[]): readonly RefusalLine[] => {
  const found = new Map<string, RefusalLine>();
  for (const refusal of refusals) {
    const each = lineOf(seen, refusal);
    if (!found.has(each.says)) found.set(each.says, each);
  }
  return [...found.values()];
};

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** `eight`; from thirteen on, figures. */
export const numberWord = (count: number): string => NUMBERS[count] ?? String(count);
