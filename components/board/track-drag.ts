import type {
  Active,
  Announcements,
  CollisionDetection,
  KeyboardCoordinateGetter,
  Modifier,
  UniqueIdentifier,
} from '@dnd-kit/core';
import { KeyboardSensor, MouseSensor, TouchSensor, useSensor, useSensors } from '@dnd-kit/core';
import { useMemo, useRef } from 'react';
import type { BoardCar, BoardStage } from '@/lib/wire/views/board';
import { gateText } from './gate-words';

/** A car and the stages of its own table. */
export interface CarOnTrack {
  readonly car: BoardCar;
  readonly stages: readonly BoardStage[];
}

export const plateId = (car: string): string => `plate-${car}`;
const placeId = (car: string, stage: number): string => `${car}|${stage}`;
export { placeId };

/** `C54-012|3` → its car and stage. */
const placeOf = (id: UniqueIdentifier): { readonly car: string; readonly stage: number } => {
  const text = String(id);
  const bar = text.lastIndexOf('|');
  return { car: text.slice(0, bar), stage: Number(text.slice(bar + 1)) };
};
export { placeOf };

/** How the chips of people move, which share the board with the plates. */
interface ChipDrag {
  readonly isChip: (active: Active | null) => boolean;
  readonly hit: CollisionDetection;
  readonly step: KeyboardCoordinateGetter;
}

interface Reach {
  readonly min: number;
  readonly max: number;
}

/** How a plate moves: along its own row only, from stage to stage, and never through a closed gate. */
export const useTrackDrag = (find: (id: string) => CarOnTrack | undefined, chips: ChipDrag) => {
  const reach = useRef<Reach | null>(null);
  /** Arrow keys step through stages; the pointer needs no such memory. */
  const keyStage = useRef(0);

  const { isChip, hit: chipHit, step: chipStep } = chips;
  const plateStep = stepper(keyStage, find);
  const sensors = useSensors(
    // A few pixels, so that a press is still a press.
    useSensor(MouseSensor, { activationConstraint: { distance: 5 } }),
    // Long enough for the page to be scrolled with a finger on a plate.
    useSensor(TouchSensor, { activationConstraint: { delay: 250, tolerance: 8 } }),
    useSensor(KeyboardSensor, {
      // Enter presses the plate as it presses any button.
      keyboardCodes: { start: ['Space'], end: ['Space', 'Enter'], cancel: ['Escape', 'Tab'] },
      coordinateGetter: (event, given) =>
        isChip(given.context.active) ? chipStep(event, given) : plateStep(event, given),
    }),
  );

  const modifiers = useMemo<Modifier[]>(
    () => [
      ({ transform, active }) => {
        if (isChip(active)) return transform;
        const { min, max } = reach.current ?? { min: -Infinity, max: Infinity };
        return { ...transform, x: Math.min(max, Math.max(min, transform.x)), y: 0 };
      },
    ],
    [isChip],
  );

  const collisionDetection = useMemo<CollisionDetection>(
    () => (given) => {
      const { active, droppableContainers, droppableRects, pointerCoordinates } = given;
      if (isChip(active)) return chipHit(given);
      const own = droppableContainers.filter(({ id }) => placeOf(id).car === active.id);
      const hit = own.find((container) => {
        if (pointerCoordinates === null) return placeOf(container.id).stage === keyStage.current;
        const rect = droppableRects.get(container.id);
        return rect !== undefined && rect.left <= pointerCoordinates.x && pointerCoordinates.x < rect.right;
      });
      return hit === undefined ? [] : [{ id: hit.id, data: { droppableContainer: hit, value: 0 } }];
    },
    [isChip, chipHit],
  );

  const begin = (id: string): void => {
    keyStage.current = find(id)?.car.stage ?? 0;
    reach.current = reachOf(id, (find(id)?.car.gate.length ?? 0) > 0);
  };

  return { sensors, modifiers, collisionDetection, begin };
};

/** Left to the first stage; right to the closed gate, where the plate stops dead, or to the last stage. */
const reachOf = (id: string, isShut: boolean): Reach | null => {
  const plate = document.getElementById(plateId(id));
  const cells = plate?.closest('.row')?.querySelectorAll('.cell') ?? [];
  const [first, last] = [cells[0], cells[cells.length - 1]];
  if (plate === null || first === undefined || last === undefined) return null;
  const own = plate.getBoundingClientRect();
  const post = plate.closest('.row')?.querySelector('.post.shut i')?.getBoundingClientRect();
  const end = isShut && post !== undefined ? post.left : last.getBoundingClientRect().right;
  return { min: first.getBoundingClientRect().left - own.left, max: Math.max(0, end - own.right) };
};

/** One arrow, one stage. Where the plate can't be seen to go, the target moves on all the same and is said. */
const stepper =
  (keyStage: { current: number }, find: (id: string) => CarOnTrack | undefined): KeyboardCoordinateGetter =>
  (event, { currentCoordinates, context }) => {
    const id = String(context.active?.id ?? '');
    const stages = find(id)?.stages.length ?? 0;
    const step = event.code === 'ArrowRight' ? 1 : event.code === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return undefined;
    event.preventDefault();
    keyStage.current = Math.min(stages - 1, Math.max(0, keyStage.current + step));
    const rect = context.droppableRects.get(placeId(id, keyStage.current));
    return rect === undefined ? undefined : { x: rect.left, y: currentCoordinates.y };
  };

export const INSTRUCTIONS = {
  draggable:
    'To move the car, press Space, then the left and right arrows from stage to stage, and Space to ask for the move. Escape leaves it where it is. Enter opens the same as buttons.',
};

/** What is said while a plate is in the hand: names of cars and stages, never ids. */
export const announcementsFor = (find: (id: string) => CarOnTrack | undefined): Announcements => {
  const say = (id: UniqueIdentifier, words: (on: CarOnTrack) => string): string | undefined => {
    const on = find(String(id));
    return on === undefined ? undefined : words(on);
  };
  return {
    onDragStart: ({ active }) =>
      say(active.id, ({ car, stages }) => `${car.chassis} picked up in ${stages[car.stage]?.name ?? ''}.`),
    onDragOver: ({ active, over }) =>
      say(active.id, (on) =>
        over === null ? `${on.car.chassis} is off its row.` : overText(on, placeOf(over.id).stage),
      ),
    onDragEnd: ({ active, over }) =>
      say(active.id, ({ car, stages }) => {
        const to = over === null ? car.stage : placeOf(over.id).stage;
        const name = stages[to]?.name ?? '';
        return to === car.stage
          ? `${car.chassis} stays in ${name}.`
          : `Asking for ${car.chassis} in ${name}.`;
      }),
    onDragCancel: ({ active }) =>
      say(active.id, ({ car, stages }) => `${car.chassis} stays in ${stages[car.stage]?.name ?? ''}.`),
  };
};

const overText = ({ car, stages }: CarOnTrack, to: number): string => {
  const name = stages[to]?.name ?? '';
  if (to === car.stage) return `${car.chassis} over ${name}, where it stands.`;
  if (to < car.stage) return `${car.chassis} over ${name}: sent back, with a reason.`;
  if (to > car.stage + 1) return `${car.chassis} over ${name}, more than one stage on. ${gateText(car)}`;
  return `${car.chassis} over ${name}, the next stage. ${gateText(car)}`;
};
