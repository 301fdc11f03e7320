'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { StartCarView } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { useSending } from './use-sending';

/** Colours that have a paint chip; any other is kept in words. */
const COLOURS = ['Oxblood', 'Bottle green', 'Pewter', 'Cream', 'Slate', 'Primer'];

/** A car is begun: on which plan, under which number, and what is known already. */
export function StartCar({ view: { plans, takenNumbers } }: { readonly view: StartCarView }) {
  const [hash, setHash] = useState(plans[0]?.hash ?? '');
  const [chassis, setChassis] = useState('');
  const [colour, setColour] = useState('');
  const [chosen, setChosen] = useState<Readonly<Record<string, string>>>({});
  const [begun, setBegun] = useState<string | null>(null);
  const sending = useSending();
  const plan = plans.find((each) => each.hash === hash);

  if (plan === undefined)
    return (
      <section className="sheet">
        <ul className="lines">
          <li>
            <Glyph name="gap" />
            <span className="t">
              <b>No plan is released yet</b>
              <span className="small dim">A car is built by a plan revision. Read one first.</span>
            </span>
            <Link className="do" href="/set-up/plans">
              Read a plan <Glyph name="arrow" size={16} />
            </Link>
          </li>
        </ul>
      </section>
    );

  const number = chassis.trim();
  const isTaken = takenNumbers.includes(number);
  const options = Object.fromEntries(
    plan.options.flatMap(({ key }) =>
      chosen[key] === undefined || chosen[key] === '' ? [] : [[key, chosen[key]]],
    ),
  );

  const begin = (): Promise<void> =>
    sending.send(
      {
        type: 'start-car',
        car: number,
        plan: hash,
        chassis: number,
        ...(colour.trim() === '' ? {} : { colour: colour.trim() }),
        options,
      },
      `${number} is begun.`,
      () => {
        setBegun(number);
        setChassis('');
        setColour('');
        setChosen({});
      },
    );

  return (
    <form
      className="sheet form"
      aria-label="Begin a car"
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      <div className="body">
        <SelectField label="Plan" value={hash} onChange={(event) => setHash(event.target.value)}>
          {plans.map((each) => (
            <option key={each.hash} value={each.hash}>
              {each.says}
            </option>
          ))}
        </SelectField>
        <div className="two">
          <Field
            label="Chassis number"
            hint="as it is stamped; kept for ever"
            value={chassis}
            onChange={(event) => setChassis(event.target.value)}
            error={
              isTaken
                ? `${number} is on the books already.`
                : (sending.faultOf('chassis') ?? sending.faultOf('car'))
            }
            maxLength={40}
            autoComplete="off"
            required
          />
          <Field
            label="Colour"
            hint="may be left open"
            list="colours"
            value={colour}
            onChange={(event) => setColour(event.target.value)}
            maxLength={60}
            autoComplete="off"
          />
          <datalist id="colours">
            {COLOURS.map((each) => (
              <option key={each} value={each} />
            ))}
          </datalist>
        </div>
        {plan.options.length === 0 ? null : (
          <div className="two">
            {plan.options.map(({ key, name, choices, usual }) => (
              <SelectField
                key={key}
                label={name}
                hint={usual === null ? 'what depends on it can’t start before' : `usual: ${usual}`}
                value={chosen[key] ?? ''}
                onChange={(event) => setChosen({ ...chosen, [key]: event.target.value })}
              >
                <option value="">not decided yet</option>
                {choices.map((choice) => (
                  <option key={choice} value={choice}>
                    {choice}
                  </option>
                ))}
              </SelectField>
            ))}
          </div>
        )}
        <AnswerLines sending={sending} done={`${begun ?? ''} is begun. Its plate stands on the board.`} />
        <div className="acts">
          {begun === null || number !== '' ? null : (
            <Link className="btn main" href="/board" prefetch={false}>
              Open the board
            </Link>
          )}
          <Button
            kind={begun === null || number !== '' ? 'main' : 'plain'}
            type="submit"
            held={sending.isBusy || isTaken}
          >
            {number === '' ? (begun === null ? 'Begin the car' : 'Begin another') : `Begin ${number}`}
          </Button>
        </div>
      </div>
    </form>
  );
}
