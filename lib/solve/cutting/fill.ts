/** Plans by hand rules: quick, mostly good, never a proof. */
import type { Instance, Pattern } from './instance';

/** Best fit decreasing: each piece, longest first, into the open bin it fills best, else into a new one; null where bins run out. */
export const bestFit = (
  { widths, kinds }: Instance,
  demand: readonly number[],
  room: readonly number[],
): readonly Pattern[] | null => {
  const left = [...room];
  // Short bins first: remnants are there to be used up.
  const order = [...kinds.keys()].sort((a, b) => (kinds[a]?.capacity ?? 0) - (kinds[b]?.capacity ?? 0));
  const open: { readonly kind: number; rest: number; readonly held: Map<number, number> }[] = [];
  for (const [item, width] of widths.entries()) {
    for (let piece = 0; piece < (demand[item] ?? 0); piece += 1) {
      let best: (typeof open)[number] | undefined;
      for (const bin of open)
        if (bin.rest >= width && (best === undefined || bin.rest < best.rest)) best = bin;
      if (best === undefined) {
        const kind = order.find((each) => (left[each] ?? 0) > 0 && (kinds[each]?.capacity ?? 0) >= width);
        if (kind === undefined) return null;
        left[kind] = (left[kind] ?? 0) - 1;
        best = { kind, rest: kinds[kind]?.capacity ?? 0, held: new Map() };
        open.push(best);
      }
      best.rest -= width;
      best.held.set(item, (best.held.get(item) ?? 0) + 1);
    }
  }
  return open.map(({ kind, held }) => asPattern(kind, held));
};

export const asPattern = (kind: number, held: ReadonlyMap<number, number>): Pattern => {
  const items = [...held.keys()].sort((a, b) => a - b);
  return { kind, items, counts: items.map((item) => held.get(item) ?? 0) };
};
