'use client';

import type { BoardGroup, Mover } from '@/lib/wire/views/board';
import { Row } from './row';
import type { CarOnTrack } from './track-drag';
import type { useMoves } from './use-moves';

interface TrackProps {
  readonly group: BoardGroup;
  readonly mover: Mover;
  readonly isFixed: boolean;
  readonly moves: ReturnType<typeof useMoves>;
  readonly onMove: (on: CarOnTrack) => void;
}

/** The cars that go one way, under the heads of its stages. */
export function Track({ group, mover, isFixed, moves, onMove }: TrackProps) {
  const { stages, cars } = group;
  const { pending, hanging } = moves;
  return (
    <section className={`track of-${stages.length}`} aria-label={group.name}>
      <div className="row heads">
        <div className="head" aria-hidden="true">
          <span className="label">Car</span>
        </div>
        <ol className="way" aria-label={`Stages of ${group.name} and their room`}>
          {stages.map((stage, at) => (
            <li key={stage.key} className="colhead">
              <span className="zone">{at + 1}</span> <span className="snm">{stage.name}</span>
              <span className="room">{stage.room}</span>
            </li>
          ))}
        </ol>
      </div>
      <ul className="rows">
        {cars.map((car) => {
          const isPending = pending?.car === car.id && pending.version === car.version;
          const isHanging = hanging?.car === car.id && hanging.stage === car.stage;
          return (
            <Row
              key={car.id}
              on={{ car, stages }}
              mayMove={mover.may}
              whyNot={mover.says}
              isFixed={isFixed}
              pending={isPending ? pending : null}
              hanging={isHanging ? hanging : null}
              onMove={() => onMove({ car, stages })}
              onLook={() => moves.look({ car, stages })}
              onLetGo={moves.letGo}
            />
          );
        })}
      </ul>
    </section>
  );
}
