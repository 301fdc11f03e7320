/** Which goods are for which line: a flow in whole pieces from what was bought to those who may take it. */
import type { OrderAnswer } from '@/lib/domain/shop/order';
import type { Bought } from './narrow';
import type { Want } from './wants';

type Given = OrderAnswer['given'][number];

interface Source {
  readonly shipment: string;
  readonly item: string;
  left: number;
}

/** Null where the packs don't reach; they do where the program’s answer was whole. */
export const handOut = (wants: readonly Want[], bought: Bought): OrderAnswer['given'] | null => {
  const sources = sourcesOf(bought);
  /** How much each want has from each source. */
  const flows = wants.map(() => new Map<Source, number>());
  const mayTake = (want: Want, source: Source): boolean =>
    want.items.includes(source.item) && want.shipments.some(({ key }) => key === source.shipment);
  const reach = wants.map((want) => sources.filter((source) => mayTake(want, source)));

  /** Gets `amount` or less for a want, if need be by making another want take elsewhere what it has. */
  const draw = (index: number, amount: number, seen: Set<Source>): number => {
    for (const source of reach[index] ?? []) {
      if (seen.has(source)) continue;
      seen.add(source);
      const free = Math.min(amount, source.left);
      if (free > 0) {
        source.left -= free;
        add(flows[index], source, free);
        return free;
      }
      for (const [other, held] of flows.entries()) {
        const movable = Math.min(amount, held.get(source) ?? 0);
        if (other === index || movable === 0) continue;
        const moved = draw(other, movable, seen);
        if (moved === 0) continue;
        add(held, source, -moved);
        add(flows[index], source, moved);
        return moved;
      }
    }
    return 0;
  };

  for (const [index, want] of wants.entries())
    for (let open = want.quantity; open > 0;) {
      const got = draw(index, open, new Set());
      if (got === 0) return null;
      open -= got;
    }
  return wants.flatMap((want, index) => shareOut(want, flows[index] ?? new Map<Source, number>()));
};

const sourcesOf = (bought: Bought): readonly Source[] => {
  const sources = new Map<string, Source>();
  for (const { shipment, offer, packs } of bought) {
    const key = JSON.stringify([shipment.key, offer.item]);
    const source = sources.get(key) ?? { shipment: shipment.key, item: offer.item, left: 0 };
    source.left += packs * offer.packSize;
    sources.set(key, source);
  }
  return [...sources.values()];
};

const add = (flow: Map<Source, number> | undefined, source: Source, amount: number): void => {
  flow?.set(source, (flow.get(source) ?? 0) + amount);
};

/** What one want has, to its lines in their order. */
const shareOut = ({ lines }: Want, flow: ReadonlyMap<Source, number>): readonly Given[] => {
  const given: Given[] = [];
  const left = [...flow].map(([source, amount]) => ({ source, amount }));
  for (const { line, quantity } of lines) {
    let open = quantity;
    for (const each of left) {
      const part = Math.min(open, each.amount);
      if (part <= 0) continue;
      given.push({ line, shipment: each.source.shipment, item: each.source.item, quantity: part });
      each.amount -= part;
      open -= part;
    }
  }
  return given;
};
