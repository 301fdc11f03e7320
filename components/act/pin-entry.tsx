import { useId } from 'react';
import type { RefObject } from 'react';

export const PIN_LENGTH = 6;

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'];

interface PinEntryProps {
  readonly field: RefObject<HTMLInputElement | null>;
  /** Whose; null until somebody is chosen. */
  readonly name: string | null;
  readonly pin: string;
  readonly onPin: (pin: string) => void;
}

/** Six boxes that fill, over keys for gloved hands; a keyboard writes into the same place. */
export function PinEntry({ field, name, pin, onPin }: PinEntryProps) {
  const id = useId();
  const set = (next: string): void => {
    onPin(next.replace(/\D/g, '').slice(0, PIN_LENGTH));
  };
  return (
    <>
      <div className="pin-entry">
        <label className="label" htmlFor={id}>
          {name === null ? 'PIN' : `${name}’s PIN`}
        </label>
        <span className="pin-field">
          {/* No keyboard of the tablet's own: the keys stand below. */}
          <input
            ref={field}
            id={id}
            type="password"
            inputMode="none"
            autoComplete="off"
            maxLength={PIN_LENGTH}
            value={pin}
            onChange={(event) => {
              set(event.target.value);
            }}
          />
          <span className="pinboxes" aria-hidden="true">
            {Array.from({ length: PIN_LENGTH }, (_, index) => (
              <i key={index} className={index < pin.length ? 'in' : ''} />
            ))}
          </span>
        </span>
      </div>
      <div className="keypad" role="group" aria-label="Keys of the PIN">
        {KEYS.map((key) => (
          <button
            key={key}
            type="button"
            onClick={() => {
              set(pin + key);
            }}
          >
            {key}
          </button>
        ))}
        <button
          type="button"
          className="alt"
          onClick={() => {
            set('');
          }}
        >
          Clear
        </button>
        <button
          type="button"
          onClick={() => {
            set(`${pin}0`);
          }}
        >
          0
        </button>
        <button
          type="button"
          className="alt"
          onClick={() => {
            set(pin.slice(0, -1));
          }}
        >
          Back
        </button>
      </div>
    </>
  );
}
