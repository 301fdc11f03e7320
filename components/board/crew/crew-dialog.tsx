'use client';

import { useId, useState } from 'react';
import type { CarOnTrack } from '@/components/board/track-drag';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { SelectField } from '@/components/ui/field';
import { lacksText, spotName } from './crew-words';
import type { Spot } from './crew-words';
import { useBoardCrew } from './use-crew';

/** The same as dragging chips, by check boxes: whom a stage of this car is given to. */
export function CrewDialog({ find }: { readonly find: (id: string) => CarOnTrack | undefined }) {
  const { asked, ask } = useBoardCrew();
  const on = asked === null ? undefined : find(asked.car);
  return asked === null || on === undefined ? null : (
    <CrewForm key={asked.car} spot={{ ...on, stage: asked.stage }} onAsk={ask} />
  );
}

interface CrewFormProps {
  readonly spot: Spot;
  readonly onAsk: (at: { readonly car: string; readonly stage: number } | null) => void;
}

function CrewForm({ spot, onAsk }: CrewFormProps) {
  const heading = useId();
  const { people, said, isBusy, give } = useBoardCrew();
  const { car, stages, stage } = spot;
  const [before, setBefore] = useState<readonly string[]>(car.given[stage] ?? []);
  const [chosen, setChosen] = useState(before);
  const names = people.filter(({ id }) => chosen.includes(id)).map(({ name }) => name);
  const close = (): void => onAsk(null);
  const save = async (): Promise<void> => {
    const words = `${spotName(spot)} is given to ${names.length === 0 ? 'nobody' : names.join(', ')}.`;
    const add = chosen.filter((id) => !before.includes(id));
    const remove = before.filter((id) => !chosen.includes(id));
    if (await give(spot, { add, remove }, words)) close();
  };
  return (
    <Dialog open onClose={close} labelledBy={heading}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <header>
          <h2 id={heading}>
            Crew <CarTag chassis={car.chassis} colour={car.colour} />
          </h2>
          <Button kind="quiet" onClick={close}>
            Close
          </Button>
        </header>
        <div className="in">
          <SelectField
            label="Stage"
            value={stage}
            onChange={(event) => {
              const to = Number(event.target.value);
              setBefore(car.given[to] ?? []);
              setChosen(car.given[to] ?? []);
              onAsk({ car: car.id, stage: to });
            }}
          >
            {stages.map(({ key, name }, at) => (
              <option key={key} value={at}>
                {at + 1} {name}
              </option>
            ))}
          </SelectField>
          <fieldset className="crewboxes">
            <legend className="label">Who</legend>
            {people.map((person) => {
              const { id, name } = person;
              const isChosen = chosen.includes(id);
              const lacks = lacksText(spot, person);
              return (
                <label key={id} className={isChosen ? 'choice on' : 'choice'}>
                  <input
                    type="checkbox"
                    checked={isChosen}
                    onChange={() =>
                      setChosen(isChosen ? chosen.filter((each) => each !== id) : [...chosen, id])
                    }
                  />
                  <span>
                    <b className="nm">{name}</b>
                    {lacks === '' ? null : <span className="small dim">{lacks}</span>}
                  </span>
                </label>
              );
            })}
          </fieldset>
          {said?.isTrouble === true ? <p className="crewsaid stop">{said.text}</p> : null}
          <p className="acts">
            <Button type="submit" kind="main" held={isBusy}>
              Give it
            </Button>
          </p>
        </div>
      </form>
    </Dialog>
  );
}
