'use client';

import Link from 'next/link';
import { useState } from 'react';
import { LookDialog } from '@/components/donor/look-dialog';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { Outcome } from '@/lib/domain/car/component-rows';
import { OUTCOME_WORDS } from '@/lib/wire/views/component-line';
import type { TripCar, TripPart } from '@/lib/wire/views/trips';

interface TripPartsProps {
  readonly trip: string;
  readonly of: TripCar;
}

interface Asked {
  readonly what: 'returned' | 'looked';
  readonly part: TripPart;
}

/** One car's parts on the trip: counted in, then looked over, one by one or all that are done at once. */
export function TripParts({ trip, of: { car, parts } }: TripPartsProps) {
  const [asked, setAsked] = useState<Asked | null>(null);
  const sending = useSending();
  const out = parts.filter(({ stands }) => stands === 'out');
  const label = `tripcar-${car.id}`;
  return (
    <section className="sheet" aria-labelledby={label}>
      <header>
        <h2 id={label}>
          <Link className="tagged" href={`/cars/${encodeURIComponent(car.id)}`} prefetch={false}>
            <CarTag chassis={car.chassis} colour={car.colour} />
          </Link>
        </h2>
        {out.length > 1 ? (
          <Button
            held={sending.isBusy}
            onClick={() =>
              void sending.send(
                {
                  type: 'return-parts',
                  car: car.id,
                  trip,
                  parts: out.map(({ key }) => ({ part: key, how: 'done' })),
                },
                `${String(out.length)} parts of ${car.chassis} are back, done.`,
              )
            }
          >
            All {out.length} back, done
          </Button>
        ) : null}
      </header>
      <ul className="tripparts">
        {parts.map((part) => (
          <li key={part.key} className={part.stands === 'over' ? 'over' : undefined}>
            <Glyph name={part.stands === 'over' && part.how === 'done' ? 'passed' : 'vendor'} />
            <span className="t">
              <b>
                <Link href={part.href} prefetch={false}>
                  {part.name} <span className="nb">{part.key}</span>
                </Link>
              </b>
              <span className="small">{part.work}</span>
              <span className="small dim">{part.stands === 'out' ? part.sent : part.says}</span>
            </span>
            <span className="acts">
              {part.stands === 'out' ? (
                <Button onClick={() => setAsked({ what: 'returned', part })}>
                  Count in<span className="vh"> {part.name}</span>
                </Button>
              ) : part.stands === 'back' ? (
                <Button kind="main" onClick={() => setAsked({ what: 'looked', part })}>
                  Look over<span className="vh"> {part.name}</span>
                </Button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {sending.answer === null || sending.answer.outcome === 'accepted' ? null : (
        <div className="in">
          <AnswerLines sending={sending} done="" />
        </div>
      )}
      {asked === null ? null : asked.what === 'looked' ? (
        <LookDialog
          car={car.id}
          title={
            <>
              {asked.part.name} of <span className="nb">{car.chassis}</span>
            </>
          }
          part={asked.part}
          otherwise={
            <>
              <Link href={asked.part.href} prefetch={false}>
                Report a finding on the car
              </Link>{' '}
              instead: nothing fits it then until a lead has decided.
            </>
          }
          onClose={() => setAsked(null)}
        />
      ) : (
        <BackDialog trip={trip} car={car} part={asked.part} onClose={() => setAsked(null)} />
      )}
    </section>
  );
}

interface OnePart {
  readonly car: TripCar['car'];
  readonly part: TripPart;
  readonly onClose: () => void;
}

const HOWS = Object.keys(OUTCOME_WORDS) as readonly Outcome[];

function BackDialog({ trip, car, part, onClose }: OnePart & { readonly trip: string }) {
  const sending = useSending();
  const [how, setHow] = useState<Outcome>('done');
  const [note, setNote] = useState('');
  return (
    <AskDialog
      title={`${part.name} of ${car.chassis}`}
      act="Count it in"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="Counted in." />}
      onAct={() =>
        void sending.send(
          {
            type: 'return-parts',
            car: car.id,
            trip,
            parts: [{ part: part.key, how, ...(note.trim() === '' ? {} : { note: note.trim() }) }],
          },
          `${part.name} is back: ${OUTCOME_WORDS[how]}.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <fieldset className="hows">
        <legend className="label">How it came back</legend>
        {HOWS.map((each) => (
          <label key={each} className="check">
            <input
              type="radio"
              name="how"
              value={each}
              checked={how === each}
              onChange={() => setHow(each)}
            />
            <span>
              {OUTCOME_WORDS[each]}
              {each === 'damaged' ? <span className="small dim"> a finding opens</span> : null}
            </span>
          </label>
        ))}
      </fieldset>
      <Field
        label="Remark"
        value={note}
        maxLength={300}
        autoComplete="off"
        onChange={(event) => setNote(event.target.value)}
      />
    </AskDialog>
  );
}
