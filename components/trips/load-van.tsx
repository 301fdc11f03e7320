'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { WaitingCar } from '@/lib/wire/views/trips';

interface LoadVanProps {
  readonly trip: string;
  readonly of: WaitingCar;
}

/** What of this car goes into the van: ticked, with what is to be done there. */
export function LoadVan({ trip, of: { car, parts } }: LoadVanProps) {
  const sending = useSending();
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const [works, setWorks] = useState<Readonly<Record<string, string>>>({});
  const workOf = (key: string): string => works[key] ?? parts.find((part) => part.key === key)?.work ?? '';
  const going = parts.filter(({ key }) => ticked.includes(key));
  const isUnsaid = going.some(({ key }) => workOf(key).trim() === '');
  const label = `van-${car.id}`;
  return (
    <form
      className="sheet van"
      aria-labelledby={label}
      onSubmit={(event) => {
        event.preventDefault();
        void sending.send(
          {
            type: 'send-parts',
            car: car.id,
            trip,
            parts: going.map(({ key }) => ({ part: key, work: workOf(key).trim() })),
          },
          `${String(going.length)} parts of ${car.chassis} are in the van.`,
          () => setTicked([]),
        );
      }}
    >
      <header>
        <h2 id={label}>
          Into the van, of <CarTag chassis={car.chassis} colour={car.colour} />
        </h2>
      </header>
      <ul className="tripparts">
        {parts.map(({ key, name, days }) => {
          const isTicked = ticked.includes(key);
          return (
            <li key={key}>
              <label className="check">
                <input
                  type="checkbox"
                  checked={isTicked}
                  onChange={(event) =>
                    setTicked(event.target.checked ? [...ticked, key] : ticked.filter((each) => each !== key))
                  }
                />
                <span>
                  <b>{name}</b> <span className="nb dim">{key}</span>{' '}
                  <span className="small dim">{days}</span>
                </span>
              </label>
              {isTicked ? (
                <Field
                  label={
                    <>
                      What is to be done<span className="vh"> to {name}</span>
                    </>
                  }
                  value={workOf(key)}
                  maxLength={300}
                  autoComplete="off"
                  onChange={(event) => setWorks({ ...works, [key]: event.target.value })}
                />
              ) : null}
            </li>
          );
        })}
      </ul>
      <div className="in">
        <AnswerLines sending={sending} done="In the van." />
        <p className="acts">
          <Button type="submit" held={sending.isBusy || going.length === 0 || isUnsaid}>
            {going.length === 0
              ? 'Tick what goes along'
              : isUnsaid
                ? 'Say what is to be done'
                : `In the van: ${String(going.length)}`}
          </Button>
        </p>
      </div>
    </form>
  );
}
