import type { StockPlaceView } from '@/lib/wire/views/stock';

/** `insert lock nut M10 class 8, lot L-0834`. */
export const placeName = ({ name, lot }: StockPlaceView): string =>
  lot === null ? name : `${name}, lot ${lot}`;

/** What a claim names it by. */
export const placeOf = ({ item, lot }: StockPlaceView): { readonly item: string; readonly lot?: string } =>
  lot === null ? { item } : { item, lot };

export interface PlaceDialogProps {
  readonly place: StockPlaceView;
  readonly onClose: () => void;
}
