'use client';

import { useLine } from '@/components/shop/use-line';
import type { BoardView } from '@/lib/wire/views/board';
import { withNews } from './floor-news';

/** The line above the board counts what stands on it, so that it has to keep step with it. */
export function FloorSays({ view }: { readonly view: BoardView }) {
  const { heads, rows, tray } = useLine();
  return (
    <p className="dim">
      {withNews(view, { heads, rows, tray }).says} {view.mover.says}
    </p>
  );
}
