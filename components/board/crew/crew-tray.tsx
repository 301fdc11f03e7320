'use client';

import { useDraggable } from '@dnd-kit/core';
import { useEffect } from 'react';
import { Button } from '@/components/ui/button';
import type { BoardPerson } from '@/lib/wire/views/board';
import { CHIP_INSTRUCTIONS } from './crew-drag';
import { useBoardCrew } from './use-crew';
import './crew.css';

const HOW = 'how-to-put-a-person';

/** The shop's people, to be put on the stages of cars. */
export function CrewTray() {
  const crew = useBoardCrew();
  const { inHand, hold, said } = crew;
  useEffect(() => {
    if (inHand === null) return;
    const back = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') hold(null);
    };
    document.addEventListener('keydown', back);
    return () => document.removeEventListener('keydown', back);
  });
  if (!crew.may) return null;
  return (
    <section className="crewtray" aria-label="People">
      <ul>
        {crew.people.map((person) => (
          <li key={person.id}>
            <PersonChip person={person} />
          </li>
        ))}
      </ul>
      <p className={said?.isTrouble === true ? 'crewsaid stop' : 'crewsaid'}>
        {said?.text ??
          (inHand === null
            ? 'Drag somebody onto a stage of a car, or press the name, then the cell.'
            : `${inHand.name} in hand: press a cell to put them there or take them off.`)}
        {said === null || said.again === null ? null : <Button onClick={said.again}>Ask again</Button>}
        {inHand === null ? null : (
          <Button kind="quiet" onClick={() => hold(null)}>
            Put back
          </Button>
        )}
      </p>
      <p id={HOW} className="vh">
        {CHIP_INSTRUCTIONS}
      </p>
    </section>
  );
}

function PersonChip({ person }: { readonly person: BoardPerson }) {
  const { inHand, hold } = useBoardCrew();
  const { listeners, setNodeRef, isDragging } = useDraggable({
    id: `person ${person.id}`,
    data: { person },
  });
  const isHeld = inHand?.id === person.id;
  return (
    <button
      ref={setNodeRef}
      type="button"
      className={`personchip${isHeld ? ' on' : ''}${isDragging ? ' lifted' : ''}`}
      aria-pressed={isHeld}
      aria-describedby={HOW}
      {...listeners}
      onClick={() => hold(isHeld ? null : person)}
    >
      <ChipFace person={person} />
    </button>
  );
}

/** Initials and name, as they lie in the tray and hang at the pointer. */
export function ChipFace({ person }: { readonly person: BoardPerson }) {
  return (
    <>
      <b aria-hidden="true">{person.initials}</b> <span>{person.name}</span>
    </>
  );
}
