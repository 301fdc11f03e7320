/** `need`: what the cars of a played day still need, what covers it, and what must be bought. */
import type { PlanDocument } from '@/lib/domain/plan/document';
import { compare, toDecimalText, ZERO } from '@/lib/domain/base/exact';
import { shopNeed } from '@/lib/domain/shop-need';
import type { DemandLine } from '@/lib/domain/shop/demand';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import { RECKONED, coveredWords, quantityText, reasonsOf } from '@/lib/domain/shop/need-words';
import type { NeedNames } from '@/lib/domain/shop/need-words';
import type { World } from '@/lib/domain/world';
import { shopDay } from '@/lib/wire/shop-day';
import { namesOf } from '@/lib/wire/views/names';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import type { Ink } from './ink';
import { readDay } from './read-day';

export interface NeedOptions {
  readonly zone: string;
  /** Work done on one car in a day: what days are reckoned from. */
  readonly minutes: string;
  readonly json?: boolean;
  readonly short?: boolean;
}

export const need = (planFile: string, linesFile: string, options: NeedOptions, ink: Ink): Answer => {
  const minutesADay = Number(options.minutes);
  if (!Number.isInteger(minutesADay) || minutesADay < 1 || minutesADay > 1440)
    return unusable(`“${options.minutes}” is no number of minutes. Write a whole number up to 1440, as 420.`);
  const read = readDay(planFile, linesFile, options.zone, ink);
  if (!read.ok) return read.error;
  const { document, hash, day } = read.value;
  const dayOf = shopDay(options.zone);
  const today = dayOf(day.lines.at(-1)?.read.line.now ?? '');
  const reckoning = { ...USUAL_WEEK, today, minutesADay };
  const { demand } = shopNeed(
    day.world,
    { [hash]: document },
    shopCatalogue([document], day.world.shop.items),
    reckoning,
  );
  const shown = demand.filter(
    (line) =>
      (compare(line.need, ZERO) > 0 || compare(line.buy, ZERO) > 0) &&
      (options.short !== true || isShort(line)),
  );
  const names = namesFor(document, day.world, dayOf);
  if (options.json === true)
    return {
      exit: 0,
      out: asJson({ today, minutesADay, basis: RECKONED, items: shown.map((line) => asData(line, names)) }),
    };
  return {
    exit: 0,
    out: [
      ...shown.flatMap((line) => printed(line, names, ink)),
      ...(shown.length === 0 ? ['Nothing is needed.'] : ['', RECKONED]),
    ],
  };
};

const isShort = ({ buy }: DemandLine): boolean => compare(buy, ZERO) > 0;

const namesFor = (
  document: PlanDocument,
  { cars, shop }: World,
  dayOf: (at: string) => string,
): NeedNames => {
  const nameOf = namesOf(document);
  return {
    thing: (_, key) => nameOf(key),
    item: nameOf,
    car: (id) => cars[id]?.chassis ?? id,
    person: (id) => shop.people[id]?.name ?? null,
    day: (day) => day,
    dayOf,
  };
};

const printed = (line: DemandLine, names: NeedNames, ink: Ink): readonly string[] => {
  const { item, unit, allocations } = line;
  const buy = isShort(line)
    ? ink.strong(`buy ${quantityText(line.buy, unit)}${line.by === null ? '' : ` by ${names.day(line.by)}`}`)
    : ink.good('covered');
  const name = names.item(item);
  const covered = coveredWords(allocations, unit, names);
  return [
    `${item}${name === null ? '' : ` ${name}`}: ${quantityText(line.need, unit)} needed, ${buy}`,
    ...reasonsOf(line, names).map((reason) => `  ${reason}`),
    ...(covered.length === 0 ? [] : [ink.faint(`  covered: ${covered.join('; ')}`)]),
  ];
};

const asData = (line: DemandLine, names: NeedNames): unknown => ({
  item: line.item,
  what: line.what,
  name: names.item(line.item),
  unit: line.unit,
  need: toDecimalText(line.need),
  demand: toDecimalText(line.demand),
  buy: toDecimalText(line.buy),
  by: line.by,
  minimum: toDecimalText(line.minimum),
  left: toDecimalText(line.left),
  reasons: reasonsOf(line, names),
  covered: coveredWords(line.allocations, line.unit, names),
  short: line.short.map(({ car, by, quantity }) => ({ car, by, quantity: toDecimalText(quantity) })),
  waitsForChoice: [...new Set(line.undecided.flatMap(({ undecided }) => undecided))],
});
