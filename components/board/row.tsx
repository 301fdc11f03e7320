'use client';

import { useDroppable } from '@dnd-kit/core';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { Cell } from './cell';
import type { CellState } from './cell';
import { CrewButton, CrewSpot } from './crew/crew-spot';
import { followed } from './followed';
import { GatePanel } from './gate-panel';
import { GatePost } from './gate-post';
import { gateNumber } from './gate-words';
import { PlateHandle, PlateLink } from './plate-handle';
import { placeId } from './track-drag';
import type { CarOnTrack } from './track-drag';
import type { Hanging, Pending } from './use-moves';

interface RowProps {
  readonly on: CarOnTrack;
  readonly mayMove: boolean;
  readonly whyNot: string;
  readonly isFixed: boolean;
  readonly pending: Pending | null;
  readonly hanging: Hanging | null;
  readonly onMove: () => void;
  readonly onLook: () => void;
  readonly onLetGo: () => void;
}

/** One car and its whole way: stages done, where it stands, what waits. */
export function Row(props: RowProps) {
  const { on, mayMove, whyNot, isFixed, pending, onMove, onLook, onLetGo } = props;
  const { car, stages } = on;
  const hanging = props.hanging === null ? null : followed(props.hanging, car);
  const here = stages[car.stage]?.name ?? '';
  const at = pending !== null && !pending.atPost ? pending.to : car.stage;
  const isRefusing = hanging?.isRefusal === true;
  const isLast = car.stage === stages.length - 1;
  return (
    <li className="row">
      <div className="head">
        <Link className="car" href={`/cars/${encodeURIComponent(car.id)}`} prefetch={false}>
          <b className="display chassis">{car.chassis}</b>
          <span className="model">
            {car.model} <span className="dim">{car.revision}</span>
          </span>
          <span className="phstage">
            <span className="dim">{car.stage + 1}</span> {here}
          </span>
        </Link>
        <span className="rowacts">
          <button className="move" type="button" aria-disabled={!mayMove || undefined} onClick={onMove}>
            Move
            <span className="vh">
              {' '}
              {car.chassis}
              {mayMove ? '' : `: ${whyNot}`}
            </span>
          </button>
          <CrewButton car={car.id} stage={car.stage} chassis={car.chassis} />
        </span>
      </div>
      <ol className="way" aria-label={`The way of ${car.chassis}`}>
        {car.way.map((cell, stage) => (
          <Place key={stages[stage]?.key ?? stage} car={car.id} stage={stage}>
            <Cell
              cell={cell}
              state={stateOf(stage, car.stage)}
              number={stage + 1}
              isLast={stage === stages.length - 1}
            />
            <CrewSpot car={car} stages={stages} stage={stage} />
            {stage === car.stage && !isLast ? (
              <GatePost
                chassis={car.chassis}
                gate={gateNumber(car)}
                count={isRefusing && hanging.lines.length > 0 ? hanging.lines.length : car.gate.length}
                isRefusing={isRefusing}
                isOpen={hanging !== null}
                onPress={hanging === null ? onLook : onLetGo}
              />
            ) : null}
          </Place>
        ))}
      </ol>
      {mayMove ? (
        <PlateHandle
          car={car}
          stage={here}
          at={at}
          atPost={pending?.atPost === true}
          isBusy={pending !== null}
          isFixed={isFixed}
          onPress={onMove}
        />
      ) : (
        <PlateLink car={car} stage={here} />
      )}
      {hanging === null ? null : <GatePanel hanging={hanging} at={car.stage + 1} onClose={onLetGo} />}
    </li>
  );
}

const stateOf = (stage: number, standsIn: number): CellState =>
  stage < standsIn ? 'done' : stage === standsIn ? 'now' : 'wait';

interface PlaceProps {
  readonly car: string;
  readonly stage: number;
  readonly children: ReactNode;
}

function Place({ car, stage, children }: PlaceProps) {
  const { setNodeRef, isOver } = useDroppable({ id: placeId(car, stage) });
  return (
    <li ref={setNodeRef} className={isOver ? 'over' : undefined}>
      {children}
    </li>
  );
}
