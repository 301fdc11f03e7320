/** Kits: picked, emptied, and what was amiss. Books give way to the box: no pick is refused for what the shelf says. */
import { ZERO, compare } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import { lotRefusals, ruleText } from '@/lib/domain/car/hardware';
import { inBox, lotInBox, outOfBox } from '@/lib/domain/shop/kit';
import type { KitClaim, KitLine } from '@/lib/domain/kit-claims';
import type { CompiledOperation, CompiledPlan } from '@/lib/domain/plan/compiled';
import { binDown } from '@/lib/domain/shop/bin-down';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import { isForUsed, reuseOf } from '@/lib/domain/plan/reuse';
import { drawnOf, quantityOf } from '@/lib/domain/shop/stock';
import type { Drawn, Recount, Stock } from '@/lib/domain/shop/stock';
import { accept, lotFactsOf, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';

export const decideKit = (at: Case, stock: Stock, claim: KitClaim): Decision => {
  const operation = at.plan.operations.get(claim.operation);
  if (operation === undefined) return unknown('operation', claim.operation);
  switch (claim.type) {
    case 'pick-kit':
      return pick(at, stock, operation, claim);
    case 'empty-kit':
      return empty(at, operation, claim);
    case 'report-kit-line':
      return report(at, operation, claim);
  }
};

/** The run that the box is for: the one that goes on, else the next. */
const runOf = ({ car }: Case, { stateKey }: CompiledOperation): number => car.operations[stateKey]?.run ?? 1;

const pick = (
  at: Case,
  stock: Stock,
  operation: CompiledOperation,
  { lines, emptied, run: named }: CarClaimOf<'pick-kit'>,
): Decision => {
  const key = operation.stateKey;
  const run = runOf(at, operation);
  const isOver = at.car.operations[key]?.status === 'finished' && !operation.repeatable;
  const items = itemsOfKit(at.plan, operation);
  // Where nothing goes in, it is bad news of the bin alone, and no run of the work stands against it.
  const againstBox = [
    ...(isOver ? [refuse('operation-already-finished', { operation: key })] : []),
    ...(named !== undefined && named !== run
      ? [refuse('stale-run', { operation: key, named, current: run })]
      : []),
  ];
  const refusals = [
    ...(lines.length === 0 ? [] : againstBox),
    ...[...lines.map(({ item }) => item), ...(emptied ?? [])].flatMap((item): readonly Refusal[] =>
      items.has(item) ? [] : [refuse('unknown-thing', { what: 'item of this kit', key: item })],
    ),
    ...lines.flatMap((line): readonly Refusal[] => [
      ...unreadable(line),
      ...(line.lot === undefined ? [] : lotRefusals(line.item, line.lot, lotFactsOf(at))),
      ...usedForNew(at, line),
    ]),
  ];
  return unless(refusals, () => {
    const picked = asDrawn(lines);
    if (emptied === undefined)
      return picked.length === 0 ? [] : [{ type: 'kit-picked', operation: key, run, lines: picked }];
    return [
      {
        type: 'kit-picked',
        operation: key,
        run,
        lines: picked,
        emptied: binsDown(at, stock, emptied, picked),
      },
    ];
  });
};

const binsDown = (
  { facts, plan, car }: Case,
  stock: Stock,
  items: readonly Key[],
  picked: readonly Drawn[],
): readonly Recount[] => {
  const catalogue = shopCatalogue([plan.document], facts.supply.items);
  const books = { shop: facts, stock, catalogue, boxes: facts.boxes, today: facts.day };
  return [...new Set(items)].sort().flatMap((item) => binDown(books, car.id, item, picked));
};

/** What the box does not hold can't leave it: the rest of the list does. */
const empty = (at: Case, operation: CompiledOperation, { lines }: CarClaimOf<'empty-kit'>): Decision => {
  const box = inBox(at.car, operation.stateKey);
  return unless((lines ?? []).flatMap(unreadable), () => {
    const out =
      lines === undefined
        ? box
        : asDrawn(lines).flatMap(({ item, lot, quantity }) =>
            outOfBox(box, { item, quantity: quantityOf(quantity), ...(lot === null ? {} : { lot }) }),
          );
    return out.length === 0
      ? []
      : [{ type: 'kit-emptied', operation: operation.stateKey, run: runOf(at, operation), lines: out }];
  });
};

/** A warning: it is never refused for what the box holds. Of what is damaged more may be scrapped than lay in the box. */
const report = (
  at: Case,
  operation: CompiledOperation,
  { item, lot, what, quantity }: CarClaimOf<'report-kit-line'>,
): Decision => {
  const said = quantity === undefined ? undefined : quantityOf(quantity);
  if (quantity !== undefined && (said === undefined || compare(said, ZERO) <= 0))
    return unknown('quantity', quantity);
  const lines = outOfBox(inBox(at.car, operation.stateKey), {
    item,
    ...(lot === undefined ? {} : { lot }),
    ...(said === undefined ? {} : { quantity: said }),
  });
  const scrapped = said === undefined ? lines : drawnOf([{ item, lot: lot ?? lotOf(lines), quantity: said }]);
  return accept({
    type: 'kit-line-reported',
    operation: operation.stateKey,
    run: runOf(at, operation),
    item,
    what,
    lines,
    drawn: what === 'damaged' ? scrapped : [],
  });
};

const lotOf = (lines: readonly Drawn[]): Drawn['lot'] =>
  lines.length === 1 ? (lines[0]?.lot ?? null) : null;

export const unreadable = ({ item, quantity }: Pick<KitLine, 'item' | 'quantity'>): readonly Refusal[] =>
  compare(quantityOf(quantity), ZERO) > 0
    ? []
    : [
        refuse('value-unreadable', {
          field: `quantity of ${item}`,
          text: quantity,
          wanted: 'a number above 0',
        }),
      ];

const asDrawn = (lines: readonly KitLine[]): readonly Drawn[] =>
  drawnOf(
    lines.map(({ item, lot, quantity }) => ({ item, lot: lot ?? null, quantity: quantityOf(quantity) })),
  );

/** All that may lie in the box: hardware of the joints in its body, what may stand in for it, and what the work takes beside. */
export const itemsOfKit = (plan: CompiledPlan, operation: CompiledOperation): ReadonlySet<Key> => {
  const { hardware = {}, consumables = {} } = plan.document.operations?.[operation.key] ?? {};
  const own = [...Object.keys(hardware), ...Object.keys(consumables)];
  const planned = operation.body.flatMap((line) =>
    'joint' in line ? (plan.joints.get(line.joint)?.hardware ?? []).map(({ item }) => item) : [],
  );
  const substitutes = [...own, ...planned].flatMap((item) =>
    Object.keys(plan.document.items?.[item]?.substitutes ?? {}),
  );
  return new Set([...own, ...planned, ...substitutes]);
};

/** Where what is taken without a word came from a box that holds one lot of it alone, that lot is named. */
export const namedByBox = (box: readonly Drawn[], taken: readonly Drawn[]): readonly Drawn[] =>
  taken.map((each) =>
    each.lot === null ? { ...each, lot: lotInBox(box, each.item, quantityOf(each.quantity)) } : each,
  );

/** A lot that the box has named may have gone bad since it was picked. */
export const lotRefusalsOf = (at: Pick<Case, 'facts' | 'car'>, named: readonly Drawn[]): readonly Refusal[] =>
  named.flatMap(({ item, lot }) => (lot === null ? [] : lotRefusals(item, lot, lotFactsOf(at))));

/** Off another car's donor and shared: this car's plan may want it new all the same. */
const usedForNew = ({ facts, plan }: Case, { item, lot }: KitLine): readonly Refusal[] => {
  const reuse = reuseOf(plan.document.items, item);
  return lot === undefined || facts.lots[lot]?.donor === undefined || isForUsed(reuse)
    ? []
    : [refuse('must-be-new', { item, rule: ruleText(reuse), joint: null })];
};
