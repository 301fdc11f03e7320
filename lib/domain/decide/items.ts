/** The shop's terms of an item, and items of its own. */
import { ZERO, compare, exact, parseDecimal } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { FilePlace, Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { ItemEntry } from '@/lib/domain/plan/document';
import { parseReuse } from '@/lib/domain/plan/notation';
import type { ItemRow, OwnWords } from '@/lib/domain/shop/offer-rows';
import { readSize, sizeText } from '@/lib/domain/shop/size';
import { sizeProblemSentence } from '@/lib/domain/shop/size-problem';
import type { ItemTermsClaim } from '@/lib/domain/supply-claims';

export interface Judged<Row> {
  readonly refusals: readonly Refusal[];
  readonly row: Row | null;
}

/** What of a file is being read, so that a refusal can say where it stands. */
export type PlaceOf = (column: string) => { readonly place: FilePlace } | undefined;

export const nowhere: PlaceOf = () => undefined;

export const plannedItem = ({ plans }: Facts, key: Key): ItemEntry | null => {
  for (const { items } of Object.values(plans)) {
    const entry = items?.[key];
    if (entry !== undefined) return entry;
  }
  return null;
};

const isPart = ({ plans }: Pick<Facts, 'plans'>, key: Key): boolean =>
  Object.values(plans).some(({ parts }) => parts?.[key] !== undefined);

/** What can be bought: an item, or a part of a plan as a whole. */
export const isBought = (facts: Facts, key: Key): boolean => isItem(facts, key) || isPart(facts, key);

export const isItem = (facts: Facts, key: Key): boolean =>
  plannedItem(facts, key) !== null || facts.supply.items[key] !== undefined;

export const unitOf = (facts: Facts, key: Key): string =>
  plannedItem(facts, key)?.unit ?? facts.supply.items[key]?.own?.unit ?? 'pc';

/** `isThere`: those that come with it may stand in the same file. */
export const judgeItem = (
  facts: Facts,
  claim: ItemTermsClaim,
  isThere: (key: Key) => boolean,
  at: PlaceOf,
): Judged<ItemRow> => {
  const planned = plannedItem(facts, claim.item);
  const own =
    planned === null ? ownWords(facts, claim, at) : { refusals: againstPlan(claim, planned, at), row: null };
  const trace = planned === null ? own.row?.trace : planned.trace;
  const refusals = [...own.refusals, ...termFaults(facts, claim, trace ?? 'bulk', isThere, at)];
  if (refusals.length > 0) return { refusals, row: null };
  const { item: id, shelfMonths, openedDays, comesWith = {}, minimum = '0', attrition = '0', isPart } = claim;
  const keeps = shelfMonths !== undefined || openedDays !== undefined;
  return {
    refusals,
    row: {
      id,
      own: own.row,
      shelf: keeps ? { months: shelfMonths ?? null, openedDays: openedDays ?? null } : null,
      comesWith,
      minimum: minimum.trim(),
      attrition: attrition.trim(),
      isPart: isPart ?? null,
    },
  };
};

/** The same words as the plan's are no contradiction: a file that was written out may be read in again. */
const againstPlan = (claim: ItemTermsClaim, planned: ItemEntry, at: PlaceOf): readonly Refusal[] => {
  const said: readonly (readonly [string, string | undefined, string])[] = [
    ['name', claim.name ?? claim.size, planned.name],
    ['unit', claim.unit, planned.unit ?? 'pc'],
    ['reuse', claim.reuse, planned.reuse ?? 'always'],
    ['trace', claim.trace, planned.trace ?? 'bulk'],
  ];
  return said.flatMap(([field, text, word]) =>
    text === undefined || text.trim() === word
      ? []
      : [refuse('plan-says', { item: claim.item, field, planned: word }, at(field))],
  );
};

const unreadable = (field: string, text: string, wanted: string, at: PlaceOf): Refusal =>
  refuse('value-unreadable', { field, text, wanted }, at(field));

const ownWords = (facts: Facts, claim: ItemTermsClaim, at: PlaceOf): Judged<OwnWords> => {
  const before = facts.supply.items[claim.item]?.own ?? null;
  const refusals: Refusal[] = [];
  let name = claim.name?.trim() ?? before?.name ?? '';
  if (claim.size !== undefined) {
    const size = readSize(claim.size);
    if (size.ok) name = sizeText(size.value);
    else
      refusals.push(
        refuse(
          'size-unreadable',
          { text: claim.size, says: size.error.map(sizeProblemSentence).join(' ') },
          at('name'),
        ),
      );
  } else if (name === '') refusals.push(unreadable('name', '', 'what it is, as M10x1.25x40 10.9', at));
  const reuse = claim.reuse ?? before?.reuse ?? 'always';
  if (parseReuse(reuse) === null)
    refusals.push(unreadable('reuse', reuse, 'once fitted, once final, 3 times or always', at));
  const row = {
    name,
    unit: claim.unit?.trim() ?? before?.unit ?? 'pc',
    reuse,
    trace: claim.trace ?? before?.trace ?? 'bulk',
  } as const;
  return { refusals, row };
};

const HUNDRED = exact(100n);

const termFaults = (
  facts: Facts,
  { item, comesWith = {}, minimum = '0', attrition = '0', isPart: part }: ItemTermsClaim,
  trace: 'lot' | 'bulk',
  isThere: (key: Key) => boolean,
  at: PlaceOf,
): readonly Refusal[] => {
  const refusals: Refusal[] = [];
  const least = parseDecimal(minimum);
  if (least === null || compare(least, ZERO) < 0)
    refusals.push(unreadable('minimum', minimum, 'a number from 0 up', at));
  const lost = parseDecimal(attrition);
  if (lost === null || compare(lost, ZERO) < 0 || compare(lost, HUNDRED) > 0)
    refusals.push(unreadable('attrition', attrition, 'a percentage from 0 to 100', at));
  else if (trace === 'lot' && compare(lost, ZERO) > 0)
    refusals.push(unreadable('attrition', attrition, 'nothing: what is traced by lot is counted', at));
  for (const key of Object.keys(comesWith)) {
    if (key === item) refusals.push(refuse('comes-with-itself', { item }, at('comesWith')));
    else if (!isThere(key)) refusals.push(refuse('unknown-thing', { what: 'item', key }, at('comesWith')));
  }
  if (part !== undefined && !isPart(facts, part))
    refusals.push(refuse('unknown-thing', { what: 'part', key: part }, at('isPart')));
  if (isPart(facts, item)) refusals.push(refuse('already-there', { what: 'part', key: item }, at('item')));
  return refusals;
};
