'use client';

import { Glyph } from '@/components/ui/glyph';
import { isOn, spotName } from './crew-words';
import type { Spot } from './crew-words';
import { useBoardCrew } from './use-crew';

/** Who was given a stage ahead; and, with a chip in the hand, the button that puts it there. */
export function CrewSpot({ car, stages, stage }: Spot) {
  const { people, inHand, isBusy, put, takeOff } = useBoardCrew();
  const spot: Spot = { car, stages, stage };
  const given = car.given[stage] ?? [];
  const named = people.filter(({ id }) => given.includes(id));
  // Behind and here the plate or the date stands in its place.
  const isShown = stage > car.stage && named.length > 0;
  const there = inHand !== null && isOn(spot, inHand.id);
  return (
    <>
      {isShown ? (
        <span className="spotcrew">
          <span className="vh">Given to {named.map(({ name }) => name).join(', ')}</span>
          <span aria-hidden="true">{named.map(({ initials }) => initials).join(' ')}</span>
        </span>
      ) : null}
      {inHand === null ? null : (
        <button
          type="button"
          className={there ? 'spot there' : 'spot'}
          aria-disabled={isBusy || undefined}
          onClick={() => {
            if (!isBusy) void (there ? takeOff(spot, inHand) : put(spot, inHand));
          }}
        >
          <span className="mark">
            <Glyph name={there ? 'passed' : 'add'} size={20} />
          </span>
          <span className="vh">
            {there ? `Take ${inHand.name} off ${spotName(spot)}` : `Put ${inHand.name} on ${spotName(spot)}`}
          </span>
        </button>
      )}
    </>
  );
}

/** Opens the crew of a car's stages with check boxes. */
export function CrewButton({ car, stage, chassis }: { car: string; stage: number; chassis: string }) {
  const { may, ask } = useBoardCrew();
  return may ? (
    <button className="move" type="button" onClick={() => ask({ car, stage })}>
      Crew<span className="vh"> of {chassis}</span>
    </button>
  ) : null;
}
