'use client';

import { DndContext, DragOverlay } from '@dnd-kit/core';
import { useMemo, useState } from 'react';
import type { BoardPerson, BoardView } from '@/lib/wire/views/board';
import './columns.css';
import './board.css';
import './board-narrow.css';
import './panel.css';
import { CrewDialog } from './crew/crew-dialog';
import { personIn, spotUnder, useChipDrag, withChips } from './crew/crew-drag';
import { ChipFace, CrewTray } from './crew/crew-tray';
import { CrewContext, useCrew } from './crew/use-crew';
import { MoveDialog } from './move-dialog';
import { ReadyWork } from './ready-work';
import { RoomDialog } from './room-dialog';
import { Track } from './track';
import { announcementsFor, INSTRUCTIONS, placeOf, useTrackDrag } from './track-drag';
import type { CarOnTrack } from './track-drag';
import { useFloor } from './use-floor';
import { useIsNarrow } from './use-is-narrow';
import { useMoves } from './use-moves';

/** The track board: rows are cars, columns their stages, and plates that are dragged from one to the next. */
export function Board({ view: asked }: { readonly view: BoardView }) {
  const view = useFloor(asked);
  const cars = useMemo(
    () =>
      new Map<string, CarOnTrack>(
        view.groups.flatMap(({ cars, stages }) => cars.map((car) => [car.id, { car, stages }] as const)),
      ),
    [view],
  );
  const find = (id: string): CarOnTrack | undefined => cars.get(id);
  const moves = useMoves(find);
  const crew = useCrew(view.people);
  const rows = useMemo(() => [...cars.keys()], [cars]);
  const chips = useChipDrag(find, rows);
  const { begin, ...drag } = useTrackDrag(find, { ...chips, isChip });
  const [flying, setFlying] = useState<BoardPerson | null>(null);
  const isFixed = useIsNarrow();

  return (
    <DndContext
      // Becomes the id of the instructions. A fixed name: a counted one would differ between server and browser.
      id="how-to-move-a-plate"
      {...drag}
      autoScroll={{ threshold: { x: 0.08, y: 0 } }}
      accessibility={{
        announcements: withChips(find, announcementsFor(find)),
        screenReaderInstructions: INSTRUCTIONS,
      }}
      onDragStart={({ active }) => {
        setFlying(personIn(active));
        chips.begin();
        if (isChip(active)) return;
        begin(String(active.id));
        moves.letGo();
      }}
      onDragCancel={() => setFlying(null)}
      onDragEnd={({ active, over }) => {
        setFlying(null);
        const person = personIn(active);
        const spot = person === null ? null : spotUnder(find, over);
        if (person !== null) {
          if (spot !== null) void crew.put(spot, person);
          return;
        }
        if (over !== null) moves.putDown(String(active.id), placeOf(over.id).stage);
      }}
    >
      <CrewContext value={crew}>
        <CrewTray />
        {view.groups.map((group) => (
          <Track
            key={group.stages.map(({ key }) => key).join(' ')}
            group={group}
            mover={view.mover}
            isFixed={isFixed}
            moves={moves}
            onMove={(on) =>
              view.mover.may ? moves.ask({ kind: 'move', car: on.car.id }) : moves.tell(on, view.mover.says)
            }
          />
        ))}
        <CrewDialog find={find} />
        <ReadyWork tray={view.tray} />
      </CrewContext>
      <Questions moves={moves} find={find} />
      {/* Not for plates: their own element moves along the row. */}
      {flying === null ? null : (
        <DragOverlay dropAnimation={null}>
          <span className="personchip flying">
            <ChipFace person={flying} />
          </span>
        </DragOverlay>
      )}
    </DndContext>
  );
}

const isChip = (active: Parameters<typeof personIn>[0]): boolean => personIn(active) !== null;

interface QuestionsProps {
  readonly moves: ReturnType<typeof useMoves>;
  readonly find: (id: string) => CarOnTrack | undefined;
}

function Questions({ moves, find }: QuestionsProps) {
  const { question } = moves;
  const on = question === null ? undefined : find(question.car);
  if (question === null || on === undefined) return null;
  const close = (): void => moves.ask(null);
  if (question.kind === 'room')
    return (
      <RoomDialog
        on={on}
        to={question.to}
        says={question.says}
        onClose={close}
        onOverride={(reason) =>
          moves.advance(on, question.to, { code: question.code, reason, retryOf: question.retryOf })
        }
      />
    );
  return (
    <MoveDialog
      on={on}
      back={question.kind === 'back' ? question.to : null}
      onAdvance={(to) => moves.advance(on, to)}
      onSendBack={(to, reason) => moves.sendBack(on, to, reason)}
      onClose={close}
    />
  );
}
