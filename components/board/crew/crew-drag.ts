import type {
  Active,
  Announcements,
  CollisionDetection,
  KeyboardCoordinateGetter,
  Over,
} from '@dnd-kit/core';
import { useMemo, useRef } from 'react';
import type { BoardPerson } from '@/lib/wire/views/board';
import { placeId, placeOf } from '@/components/board/track-drag';
import type { CarOnTrack } from '@/components/board/track-drag';
import { isOn, lacksText, spotName } from './crew-words';
import type { Spot } from './crew-words';

/** Whose chip it is; null for a plate. */
export const personIn = (active: Active | null): BoardPerson | null => {
  const held: unknown = active?.data.current?.['person'];
  return held === undefined ? null : (held as BoardPerson);
};

type Find = (id: string) => CarOnTrack | undefined;

/** The stage of a car that something is over. */
export const spotUnder = (find: Find, over: Pick<Over, 'id'> | null): Spot | null => {
  if (over === null) return null;
  const { car, stage } = placeOf(over.id);
  const on = find(car);
  return on === undefined ? null : { ...on, stage };
};

/** A chip goes anywhere on the board; arrow keys take it from stage to stage and from car to car. */
export const useChipDrag = (find: Find, cars: readonly string[]) => {
  const at = useRef({ row: 0, stage: 0 });

  const hit = useMemo<CollisionDetection>(
    () =>
      ({ droppableContainers, droppableRects, pointerCoordinates }) => {
        const aimed = placeId(cars[at.current.row] ?? '', at.current.stage);
        const found = droppableContainers.find(({ id }) => {
          if (pointerCoordinates === null) return id === aimed;
          const rect = droppableRects.get(id);
          const { x, y } = pointerCoordinates;
          return rect !== undefined && rect.left <= x && x < rect.right && rect.top <= y && y < rect.bottom;
        });
        return found === undefined ? [] : [{ id: found.id, data: { droppableContainer: found, value: 0 } }];
      },
    [cars],
  );

  const step: KeyboardCoordinateGetter = (event, { context }) => {
    const by = STEPS[event.code];
    if (by === undefined) return undefined;
    event.preventDefault();
    const row = within(at.current.row + by.row, cars.length);
    const stages = find(cars[row] ?? '')?.stages.length ?? 0;
    at.current = { row, stage: within(at.current.stage + by.stage, stages) };
    const place = context.droppableContainers.get(placeId(cars[row] ?? '', at.current.stage));
    place?.node.current?.scrollIntoView({ block: 'nearest' });
    const rect = place?.node.current?.getBoundingClientRect();
    return rect === undefined ? undefined : { x: rect.left, y: rect.top };
  };

  return {
    hit,
    step,
    /** From where the arrows go: the first car, in the stage that it stands in. */
    begin(): void {
      at.current = { row: 0, stage: find(cars[0] ?? '')?.car.stage ?? 0 };
    },
  };
};

const STEPS: Readonly<Record<string, { readonly row: number; readonly stage: number }>> = {
  ArrowRight: { row: 0, stage: 1 },
  ArrowLeft: { row: 0, stage: -1 },
  ArrowDown: { row: 1, stage: 0 },
  ArrowUp: { row: -1, stage: 0 },
};

const within = (index: number, count: number): number => Math.min(count - 1, Math.max(0, index));

export const CHIP_INSTRUCTIONS =
  'To put this person on a stage, press Space, then the arrows from stage to stage and from car to car, and Space to put them there. Escape puts the chip back. Enter takes the chip in hand, to press a cell with it.';

/** What is said while a chip is in the hand; plates say their own. */
export const withChips = (find: Find, plates: Announcements): Announcements => ({
  onDragStart: (event) => {
    const person = personIn(event.active);
    return person === null ? plates.onDragStart(event) : `${person.name} picked up.`;
  },
  onDragOver: (event) => {
    const person = personIn(event.active);
    if (person === null) return plates.onDragOver(event);
    const spot = spotUnder(find, event.over);
    if (spot === null) return `${person.name} is over no car.`;
    const there = isOn(spot, person.id) ? 'where they are already' : lacksText(spot, person);
    return `${person.name} over ${spotName(spot)}. ${there}`.trim();
  },
  onDragEnd: (event) => {
    const person = personIn(event.active);
    if (person === null) return plates.onDragEnd(event);
    const spot = spotUnder(find, event.over);
    return spot === null ? `${person.name} goes back.` : `${person.name} put on ${spotName(spot)}.`;
  },
  onDragCancel: (event) => {
    const person = personIn(event.active);
    return person === null ? plates.onDragCancel(event) : `${person.name} goes back.`;
  },
});
