'use client';

import { useEffect, useId } from 'react';
import { Glyph } from '@/components/ui/glyph';
import { cleaned } from './model/moves';

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0'];

interface PadProps {
  /** The name of the value that the keys write. */
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly onValue: (text: string) => void;
  /** What the big key under the figures says and does; held back where there is nothing to enter. */
  readonly enterSays: string;
  readonly onEnter: () => void;
  readonly isHeld: boolean;
  /** What is to be said of what was entered. */
  readonly said: { readonly text: string; readonly isWrong: boolean } | null;
  /** Something is over the window: the entry box says so by its edge. */
  readonly isStop: boolean;
}

/** Keys for gloved hands. The entry box stays in sight above them; a keyboard writes into it from anywhere. */
export function Pad(props: PadProps) {
  const { label, unit, value, onValue, enterSays, onEnter, isHeld, said, isStop } = props;
  const id = useId();
  useKeyboard(isHeld ? null : { value, onValue, onEnter });
  return (
    <>
      <div className={isStop ? 'so-entry stopped' : 'so-entry'}>
        <label className="label" htmlFor={id}>
          {label}
        </label>
        {/* No keyboard of the tablet's own: the keys stand below. */}
        <input
          id={id}
          className="num"
          type="text"
          inputMode="none"
          autoComplete="off"
          value={value}
          readOnly={isHeld}
          aria-invalid={said?.isWrong === true || undefined}
          aria-describedby={`${id}-error`}
          onChange={(event) => {
            onValue(cleaned(event.target.value));
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && !isHeld) onEnter();
          }}
        />
        <span>{unit}</span>
      </div>
      <p className={said?.isWrong === true ? 'so-said wrong' : 'so-said'} id={`${id}-error`} role="alert">
        {said?.text}
      </p>
      <div className="so-keys" role="group" aria-label="Keys">
        {KEYS.map((key) => (
          <button
            key={key}
            type="button"
            aria-label={key === '.' ? 'point' : undefined}
            aria-disabled={isHeld || undefined}
            onClick={() => {
              if (!isHeld) onValue(cleaned(value + key));
            }}
          >
            {key}
          </button>
        ))}
        <button
          type="button"
          className="alt"
          aria-disabled={isHeld || undefined}
          onClick={() => {
            if (!isHeld) onValue('');
          }}
        >
          Clear
        </button>
      </div>
      <button
        className="so-enter"
        type="button"
        aria-disabled={isHeld || value === '' || undefined}
        onClick={() => {
          if (!isHeld && value !== '') onEnter();
        }}
      >
        {enterSays} <Glyph name="arrow" />
      </button>
    </>
  );
}

interface Keyed {
  readonly value: string;
  readonly onValue: (text: string) => void;
  readonly onEnter: () => void;
}

const isTaken = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, dialog') !== null;

/** Figures count wherever the focus is: a keyboard at the bench needs no aim. */
const useKeyboard = (keyed: Keyed | null): void => {
  useEffect(() => {
    if (keyed === null) return;
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTaken(event.target)) return;
      if (/^[0-9.,]$/.test(event.key)) keyed.onValue(cleaned(keyed.value + event.key));
      else if (event.key === 'Backspace') keyed.onValue(keyed.value.slice(0, -1));
      // On a button or a link, Enter is that one's own.
      else if (event.key === 'Enter' && !(event.target as HTMLElement).closest('button, a')) keyed.onEnter();
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
    };
  }, [keyed]);
};
