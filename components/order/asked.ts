import type { PinChoice, PinView } from '@/lib/wire/views/order';

/** A line that somebody wants otherwise. */
export interface Asked {
  readonly item: string;
  readonly name: string;
  readonly unit: string;
  readonly pin: PinChoice | null;
  readonly sellers: PinView['sellers'];
}
