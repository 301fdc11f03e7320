'use client';

import { useEffect, useMemo, useState } from 'react';
import { useLine } from '@/components/shop/use-line';
import { line } from '@/lib/offline/live-line';
import { isOwnAct } from '@/lib/offline/own-acts';
import type { BoardView } from '@/lib/wire/views/board';
import { withNews } from './floor-news';

/** The board as it is now: a row that came by the line takes its place without asking the server again. */
export const useFloor = (view: BoardView): BoardView => {
  const { heads, rows, tray } = useLine();
  const live = useMemo(() => withNews(view, { heads, rows, tray }), [view, heads, rows, tray]);
  const { clock } = view;
  // What came before the line was open has to be asked for; and the last car that leaves leaves another page behind.
  const isEmptied = live.groups.length === 0;
  useEffect(() => line.follow(isEmptied ? { clock } : { stood: clock }), [clock, isEmptied]);
  return live;
};

/** As long as an eye needs to find the plate. */
const LIT_MS = 1600;

/** Lights a plate once when somebody else changed its car; one’s own act is no news. */
export const useLit = (car: string): boolean => {
  const clock = useLine().rows.get(car)?.clock;
  const [seen, setSeen] = useState(clock);
  const isLit = clock !== seen;
  useEffect(() => {
    if (!isLit) return;
    const timer = setTimeout(() => setSeen(clock), isOwnAct(`car:${car}`) ? 0 : LIT_MS);
    return () => clearTimeout(timer);
  }, [car, clock, isLit]);
  return isLit && !isOwnAct(`car:${car}`);
};
