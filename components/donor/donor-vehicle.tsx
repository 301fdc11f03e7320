'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { DonorTexts, DonorView } from '@/lib/wire/views/donor';

/** Which vehicle it was, and what is odd about its number: said, never refused. */
export function DonorVehicleSheet({ view: { car, me, vehicle } }: { readonly view: DonorView }) {
  const [isOpen, setOpen] = useState(false);
  const { told, whence, doubts, recorded } = vehicle;
  const named = [told.year, told.model].filter((word) => word !== '').join(' ');
  return (
    <section className="sheet" aria-labelledby="donor-vehicle">
      <header>
        <h2 id="donor-vehicle">Which vehicle</h2>
        {me.isLead ? (
          <Button onClick={() => setOpen(true)}>{recorded === '' ? 'Record it' : 'Correct it'}</Button>
        ) : null}
      </header>
      {recorded === '' ? (
        <p className="idle dim">Nobody has said which vehicle this donor was.</p>
      ) : (
        <ul className="asidelist">
          <li>
            <Glyph name="hint" size={20} />
            <span>
              <b>
                {named === '' ? 'Make and model not told' : named}
                {told.number === '' ? null : (
                  <>
                    , number <span className="nb">{told.number}</span>
                  </>
                )}
              </b>
              {whence === '' ? null : <span>{whence}</span>}
              <span className="small dim">{recorded}</span>
            </span>
          </li>
          {doubts.map((doubt) => (
            <li key={doubt}>
              <Glyph name="caution" size={20} />
              <span>{doubt}</span>
            </li>
          ))}
        </ul>
      )}
      {isOpen ? <VehicleDialog car={car.id} told={vehicle.told} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}

interface VehicleDialogProps {
  readonly car: string;
  readonly told: DonorTexts;
  readonly onClose: () => void;
}

const FIELDS: readonly (readonly [keyof DonorTexts, string, string])[] = [
  ['year', 'Year', 'as 1967'],
  ['model', 'Make and model', 'as the papers have it'],
  ['number', 'Chassis number or VIN', 'as stamped, letter by letter'],
  ['mileage', 'Mileage, if told', 'with its unit'],
  ['from', 'Where it came from', ''],
];

function VehicleDialog({ car, told, onClose }: VehicleDialogProps) {
  const sending = useSending();
  const [now, setNow] = useState(told);
  const put = (field: keyof DonorTexts, text: string): void => setNow({ ...now, [field]: text });
  return (
    <AskDialog
      title="Which vehicle the donor was"
      act="Keep it"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="Kept." />}
      onAct={() =>
        void sending.send(
          { type: 'record-donor', car, ...now },
          'Which vehicle the donor was is kept.',
          onClose,
        )
      }
      onClose={onClose}
    >
      {FIELDS.map(([field, label, hint], index) => (
        <Field
          key={field}
          label={label}
          hint={hint === '' ? undefined : hint}
          value={now[field]}
          maxLength={60}
          autoComplete="off"
          {...(index === 0 ? { 'data-first': true, inputMode: 'numeric' as const } : {})}
          onChange={(event) => put(field, event.target.value)}
        />
      ))}
      <Field
        label="Day it came"
        type="date"
        value={now.came}
        onChange={(event) => put('came', event.target.value)}
      />
    </AskDialog>
  );
}
