'use client';

import { useEffect, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { SignInPerson } from '@/lib/wire/views/sign-in';
import { HiddenFields } from './hidden-fields';
import { Tiles } from './tiles';

const LENGTH = 6;
const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'];

interface BenchFormProps {
  readonly people: readonly SignInPerson[];
  readonly chosen: string;
  readonly token: string;
  readonly to: string;
  readonly error: string | null;
  /** Shown in place of the keys while the chosen person's PIN rests. */
  readonly rest: ReactNode;
  /** Below the names. */
  readonly foot: ReactNode;
}

/** A name and six figures. The form is posted as it is; the keys only write into its one field. */
export function BenchForm({ people, chosen: before, token, to, error, rest, foot }: BenchFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const [chosen, setChosen] = useState(before);
  const [length, setLength] = useState(0);
  const [hasKeys, setHasKeys] = useState(false);
  const person = people.find(({ id }) => id === chosen);
  const isResting = rest !== null && chosen === before;

  useEffect(() => {
    setHasKeys(true);
    // What was chosen and typed before this script came counts too.
    const picked = form.current?.querySelector<HTMLInputElement>('input[name=name]:checked')?.value ?? before;
    setChosen(picked);
    const { length } = field.current?.value ?? '';
    setLength(length);
    if (length === LENGTH && picked !== '') form.current?.requestSubmit();
  }, [before]);

  const write = (next: string): void => {
    const input = field.current;
    if (input === null || input.disabled) return;
    input.value = next.replace(/\D/g, '').slice(0, LENGTH);
    setLength(input.value.length);
    if (input.value.length === LENGTH && chosen !== '') form.current?.requestSubmit();
  };
  const typed = (): string => field.current?.value ?? '';

  const choose = (id: string, byPointer: boolean): void => {
    setChosen(id);
    if (id !== chosen) write('');
    if (byPointer) field.current?.focus();
  };

  // Figures count wherever the focus is: a keyboard at the bench needs no aim.
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.target === field.current || event.ctrlKey || event.metaKey || event.altKey) return;
      if (/^\d$/.test(event.key)) write(typed() + event.key);
      if (event.key === 'Backspace') write(typed().slice(0, -1));
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  });

  return (
    <form ref={form} className="cols" method="post" action="/api/auth/callback/bench">
      <HiddenFields token={token} to={to} />
      <section className="names">
        <h1>Who is at the bench?</h1>
        <p className="dim hint">Your name, then your PIN. The PIN is asked again for each signature.</p>
        <Tiles people={people} chosen={chosen} onChoose={choose} to={to} />
        {foot}
      </section>
      {isResting ? rest : null}
      <section className="pinpad" aria-label="PIN" hidden={isResting}>
        <div className="entry">
          <label className="label" htmlFor="pin">
            {person === undefined ? 'PIN' : `${person.name}’s PIN`}
          </label>
          <span className="pinfield">
            <input
              ref={field}
              id="pin"
              name="secret"
              type="password"
              pattern="\d{6}"
              title="six figures"
              maxLength={LENGTH}
              required
              autoComplete="off"
              // The keys stand below, once this script is there.
              inputMode={hasKeys ? 'none' : 'numeric'}
              aria-describedby={error === null ? 'opens' : 'pin-error opens'}
              aria-invalid={error === null ? undefined : true}
              disabled={isResting}
              onInput={() => write(typed())}
            />
            <span className="pinboxes" aria-hidden="true">
              {Array.from({ length: LENGTH }, (_, at) => (
                <i key={at} className={at < length ? 'in' : ''} />
              ))}
            </span>
          </span>
          {error === null ? null : (
            <p className="msg" id="pin-error" role="alert">
              <Glyph name="failed" size={18} /> {error}
            </p>
          )}
        </div>
        <div className="keypad" role="group" aria-label="Keys of the PIN">
          {KEYS.map((key) => (
            <button key={key} type="button" onClick={() => write(typed() + key)}>
              {key}
            </button>
          ))}
          <button type="button" className="alt" onClick={() => write('')}>
            Clear
          </button>
          <button type="button" onClick={() => write(`${typed()}0`)}>
            0
          </button>
          <button type="button" className="alt" onClick={() => write(typed().slice(0, -1))}>
            Back
          </button>
        </div>
        <Button kind="main" type="submit" className="go1">
          {person === undefined ? 'Sign in' : `Sign in as ${person.name}`}
        </Button>
        <p className="small dim foot2" id="opens">
          Opens by itself at the sixth figure. Forgotten? The lead makes you a link to set a new one.
        </p>
      </section>
    </form>
  );
}
