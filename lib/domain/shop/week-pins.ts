/** What was insisted on for an item, as pins of its lines: they stand and fall together. */
import { ONE, exact, multiply, parseDecimal } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { SupplyRows } from './offer-rows';
import type { OrderLine, Pin } from './order';

/** A quantity goes to the earliest lines first; what is more than all of them goes to the last. */
export const pinsOf = (
  lines: readonly OrderLine[],
  pins: SupplyRows['pins'],
  stepsOf: ReadonlyMap<Key, number>,
): readonly Pin[] =>
  Object.values(pins).flatMap(({ id, pin }) => {
    const own = lines.filter(({ item }) => item === id);
    if (pin === null || own.length === 0) return [];
    const wanted =
      pin.quantity === null ? null : multiply(parseDecimal(pin.quantity) ?? ONE, exact(stepsOf.get(id) ?? 1));
    let rest = wanted === null ? 0 : Number((wanted.num + wanted.den - 1n) / wanted.den);
    return own.map((line, index): Pin => {
      const quantity = index === own.length - 1 ? rest : Math.min(rest, line.quantity);
      rest -= quantity;
      return {
        line: line.key,
        group: id,
        ...(pin.supplier === null ? {} : { supplier: pin.supplier }),
        ...(wanted === null ? {} : { quantity }),
        ...(pin.buyToday ? { buyToday: true } : {}),
        ...(pin.isExcluded ? { isExcluded: true } : {}),
      };
    });
  });
