/** Events at the saw. */
import type { ShopEvent } from '@/lib/domain/events';
import { afterBar } from '@/lib/domain/shop/remnants';
import type { RemnantRow } from '@/lib/domain/shop/remnants';
import type { Shop } from '@/lib/domain/shop/rows';
import { sawnId } from '@/lib/domain/shop/sawn';
import type { SawnPiece, SawnRows } from '@/lib/domain/shop/sawn';

type Of<Type extends ShopEvent['type']> = Extract<ShopEvent, { type: Type }>;

export const barsSawn = (shop: Shop, event: Of<'bars-sawn'>): Shop => {
  const { item, bars, meta } = event;
  const before = shop.remnants[item];
  const lengths = bars.reduce(afterBar, before?.lengths ?? []);
  const isTouched = before !== undefined || lengths.length > 0;
  const { by, at } = meta;
  const row: RemnantRow =
    before === undefined
      ? { item, lengths, by, at, isUncounted: true }
      : { ...before, lengths, sawn: { by, at } };
  return {
    ...shop,
    remnants: isTouched ? { ...shop.remnants, [item]: row } : shop.remnants,
    sawn: withPieces(
      shop.sawn,
      event,
      bars.flatMap(({ pieces }) => pieces),
      1,
    ),
  };
};

export const piecesRecut = (shop: Shop, event: Of<'pieces-recut'>): Shop => ({
  ...shop,
  sawn: withPieces(shop.sawn, event, event.pieces, -1),
});

const withPieces = (
  sawn: SawnRows,
  { item, meta: { by, at } }: Of<'bars-sawn' | 'pieces-recut'>,
  pieces: readonly SawnPiece[],
  sign: 1 | -1,
): SawnRows => {
  const found: Record<string, SawnRows[string]> = { ...sawn };
  for (const piece of pieces) {
    const id = sawnId(item, piece);
    found[id] = { ...piece, id, item, count: (found[id]?.count ?? 0) + sign * piece.count, by, at };
  }
  return found;
};
