/** A board as it was asked for, with everything in its place that was heard since. */
import type { LiveState } from '@/lib/offline/live-state';
import type { BoardCar, BoardView } from '@/lib/wire/views/board';

/** Rows that are older than what the board shows already are left out; so is a whole floor that is. */
export const withNews = (
  view: BoardView,
  { heads, rows, tray }: Pick<LiveState, 'heads' | 'rows' | 'tray'>,
): BoardView => {
  if (heads === null || heads.clock < view.clock) return view;
  const shown = new Map(view.groups.flatMap(({ cars }) => cars.map((car) => [car.id, car] as const)));
  const newest = (id: string): BoardCar | undefined => {
    const before = shown.get(id);
    const known = rows.get(id);
    const isNewer =
      known !== undefined && known.clock >= view.clock && known.row.version >= (before?.version ?? 0);
    return isNewer ? known.row : before;
  };
  const groups = heads.groups.map((group) => ({
    ...group,
    cars: group.cars.flatMap((id) => newest(id) ?? []),
  }));
  const isLater = tray !== null && tray.clock >= view.clock;
  return { ...view, says: heads.says, groups, tray: isLater ? tray.tray : view.tray };
};
