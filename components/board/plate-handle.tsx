'use client';

import { useDraggable } from '@dnd-kit/core';
import Link from 'next/link';
import { useLayoutEffect } from 'react';
import { PlateFace, plateSays } from '@/components/shop/plate';
import type { BoardCar } from '@/lib/wire/views/board';
import { plateId } from './track-drag';
import { useLit } from './use-floor';

interface PlateHandleProps {
  readonly car: BoardCar;
  readonly stage: string;
  /** Where it is shown: the stage that it stands in, or the one that it was just moved to. */
  readonly at: number;
  readonly atPost: boolean;
  readonly isBusy: boolean;
  /** Where there is no room for a track, a plate is pressed and not dragged. */
  readonly isFixed: boolean;
  readonly onPress: () => void;
}

/** The plate of a car for who may move it: dragged along its row, or pressed for the same with buttons. */
export function PlateHandle({ car, stage, at, atPost, isBusy, isFixed, onPress }: PlateHandleProps) {
  const { attributes, listeners, node, setNodeRef, transform, isDragging } = useDraggable({
    id: car.id,
    disabled: isFixed || isBusy,
    attributes: { roleDescription: 'plate' },
  });
  const lit = useLit(car.id) ? ' lit' : '';
  const x = transform?.x ?? null;
  // By script and on the element: the page's policy allows no style attribute.
  useLayoutEffect(() => {
    if (node.current !== null) node.current.style.transform = x === null ? '' : `translate3d(${x}px, 0, 0)`;
  }, [node, x]);
  const state = `${isDragging ? ' drag' : ''}${atPost ? ' atpost' : ''}${isBusy ? ' busy' : ''}${lit}`;
  const describedBy = isFixed ? undefined : attributes['aria-describedby'];
  return (
    <>
      {isDragging || atPost ? <span className={`ghost at-${at + 1}`} aria-hidden="true" /> : null}
      <button
        ref={setNodeRef}
        id={plateId(car.id)}
        type="button"
        className={`platecard at-${at + 1}${state}`}
        aria-roledescription={isFixed ? undefined : attributes['aria-roledescription']}
        aria-describedby={describedBy}
        aria-busy={isBusy || undefined}
        {...listeners}
        onClick={onPress}
      >
        <Stamped car={car} stage={stage} />
      </button>
    </>
  );
}

/** The same for who may not: it leads to the car. */
export function PlateLink({ car, stage }: { readonly car: BoardCar; readonly stage: string }) {
  const lit = useLit(car.id) ? ' lit' : '';
  return (
    <Link
      className={`platecard at-${car.stage + 1}${lit}`}
      href={`/cars/${encodeURIComponent(car.id)}`}
      prefetch={false}
    >
      <Stamped car={car} stage={stage} />
    </Link>
  );
}

function Stamped({ car, stage }: { readonly car: BoardCar; readonly stage: string }) {
  const { chassis, colour, crew, loose, hold } = car;
  return (
    <>
      <span className="vh">
        {plateSays(car)}, stands in {stage}
      </span>
      <PlateFace chassis={chassis} colour={colour} crew={crew} loose={loose} hold={hold} />
    </>
  );
}
