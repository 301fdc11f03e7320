'use client';

import { DndContext } from '@dnd-kit/core';
import { useMemo } from 'react';
import type { BoardView } from '@/lib/wire/views/board';
import './columns.css';
import './board.css';
import './board-narrow.css';
import './panel.css';
import { MoveDialog } from './move-dialog';
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
  const { begin, ...drag } = useTrackDrag(find);
  const isFixed = useIsNarrow();

  return (
    <DndContext
      // Becomes the id of the instructions. A fixed name: a counted one would differ between server and browser.
      id="how-to-move-a-plate"
      {...drag}
      autoScroll={{ threshold: { x: 0.08, y: 0 } }}
      accessibility={{ announcements: announcementsFor(find), screenReaderInstructions: INSTRUCTIONS }}
      onDragStart={({ active }) => {
        begin(String(active.id));
        moves.letGo();
      }}
      onDragEnd={({ active, over }) => {
        if (over !== null) moves.putDown(String(active.id), placeOf(over.id).stage);
      }}
    >
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
      <Questions moves={moves} find={find} />
    </DndContext>
  );
}

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
