'use client';

import { useEffect, useState } from 'react';
import { Chip } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { isPlateOf } from './model/plate-code';
import type { AtCar } from './use-at-car';

interface CarBarProps {
  readonly car: SignOffView['car'];
  readonly at: AtCar;
  /** Where nothing is to be signed or done, nobody is asked where they stand. */
  readonly isAsked: boolean;
}

/** Its number and paint across the whole screen: the wrong one of six like cars is the dearest slip of all. */
export function CarBar({ car, at, isAsked }: CarBarProps) {
  return (
    <section className="so-carbar" aria-label="Which car">
      <p className="so-car">
        <Chip colour={car.colour} />
        <b>{car.chassis}</b>
        <span className="so-colour">{car.colour ?? 'no colour yet'}</span>
        {at.isSure === true ? (
          <span className="so-sure small">
            <Glyph name="passed" size={20} /> this car, you said
          </span>
        ) : null}
      </p>
      {isAsked && at.isSure === false ? <Ask car={car} onSure={at.confirm} /> : null}
    </section>
  );
}

/** Once for each car and sitting: a tap, or the code on the plate, scanned or typed. */
function Ask({ car, onSure }: { readonly car: SignOffView['car']; readonly onSure: () => void }) {
  const [code, setCode] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const sure = (): void => {
    announce(`${car.chassis} it is.`);
    onSure();
  };
  const read = (text: string): void => {
    if (text.trim() === '') setWrong('Scan or type the code on its plate, or tap the key.');
    else if (isPlateOf(text, car)) sure();
    else {
      setWrong(`The plate says ${text.trim()}; this sheet is for ${car.chassis}. Go to the right car first.`);
      setCode('');
    }
  };
  useScanner(code, setCode, read);
  return (
    <form
      className="so-ask"
      onSubmit={(event) => {
        event.preventDefault();
        read(code);
      }}
    >
      <p>
        <b>Is this the car before you?</b> Asked once; then the keys are yours.
      </p>
      <Button kind="main" className="so-yes" onClick={sure}>
        It is {car.chassis}
      </Button>
      <Field
        label="Or scan or type its plate"
        value={code}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        error={wrong}
        onChange={(event) => {
          setCode(event.target.value);
          setWrong(null);
        }}
      />
    </form>
  );
}

const isTaken = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, dialog') !== null;

/** A scanner types like a keyboard and ends with Enter; it counts wherever the focus is. */
const useScanner = (code: string, onCode: (code: string) => void, read: (code: string) => void): void => {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTaken(event.target)) return;
      const isOnButton = event.target instanceof HTMLElement && event.target.closest('button, a') !== null;
      if (event.key.length === 1 && !(isOnButton && event.key === ' ')) onCode(code + event.key);
      // With nothing scanned, Enter on a button or a link is that one's own.
      else if (event.key === 'Enter' && code !== '') {
        event.preventDefault();
        read(code);
      }
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
    };
  });
};
