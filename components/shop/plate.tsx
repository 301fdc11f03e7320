import type { ReactNode } from 'react';
import { Glyph } from '@/components/ui/glyph';

/** The cars' own colours that have a chip; any other colour is named in words beside an empty chip. */
const CHIPS = ['oxblood', 'bottle', 'pewter', 'cream', 'slate', 'primer'] as const;

/** `Bottle green` → `bottle`. */
export const chipOf = (colour: string | null): string => {
  const words = (colour ?? '').toLowerCase().split(/[^a-z]+/);
  return CHIPS.find((chip) => words.includes(chip)) ?? 'none';
};

/** A paint chip. It stands beside the chassis number, never alone. */
export function Chip({ colour }: { readonly colour: string | null }) {
  return <i className={`chip ${chipOf(colour)}`} aria-hidden="true" />;
}

/** Chip and chassis number in a line of text. */
export function CarTag({ chassis, colour }: { readonly chassis: string; readonly colour: string | null }) {
  return (
    <span className="cartag">
      <Chip colour={colour} />
      <b>{chassis}</b>
    </span>
  );
}

export interface PlateFaceProps {
  readonly chassis: string;
  readonly colour: string | null;
  readonly crew: readonly { readonly initials: string; readonly name: string }[];
  readonly loose: number;
  /** What holds the car, where a hold stands on it: between its crew and the count, whose label gives it the room. */
  readonly hold?: { readonly mark: string; readonly says: string } | null;
}

/**
 * What is stamped on a car's plate. Whoever shows it brings the plate: a link, a handle or plain; and says what is on
 * it with `plateSays`, since stamped cells read badly.
 */
export function PlateFace({ chassis, colour, crew, loose, hold = null }: PlateFaceProps): ReactNode {
  return (
    <span className="face" aria-hidden="true">
      <span className="no">
        <Chip colour={colour} />
        <span className="chassis">{numberParts(chassis)}</span>
      </span>
      <span className="fields">
        <span className="f crew">
          {cells(
            crew.map(({ initials }) => initials),
            hold === null ? 2 : 1,
          ).map((text, at) => (
            <b key={at}>{text}</b>
          ))}
        </span>
        {hold === null ? null : (
          <span className="f held">
            <Glyph name="hold" size={18} /> <b>{hold.mark}</b>
          </span>
        )}
        <span className="f">
          <span className="label">Loose</span> <b>{loose}</b>
        </span>
      </span>
    </span>
  );
}

/** `C54-012, crew Ines Harrow, 12 loose ends`. */
export const plateSays = ({ chassis, crew, loose, hold = null }: PlateFaceProps): string =>
  [
    chassis,
    ...(hold === null ? [] : [hold.says]),
    crew.length === 0 ? 'nobody on it' : `crew ${crew.map(({ name }) => name).join(', ')}`,
    `${loose} loose end${loose === 1 ? '' : 's'}`,
  ].join(', ');

/** So many cells are stamped on a plate; where more are on the car, the last counts them. */
const cells = (initials: readonly string[], room: number): readonly string[] =>
  initials.length <= room
    ? initials
    : [...initials.slice(0, room - 1), `+${String(initials.length - room + 1)}`];

/** `C54-` and `011`: where there is little room only the second part is shown; it is read whole all the same. */
const numberParts = (chassis: string): ReactNode => {
  const cut = chassis.lastIndexOf('-') + 1;
  return cut === 0 ? (
    chassis
  ) : (
    <>
      <span className="pre">{chassis.slice(0, cut)}</span>
      {chassis.slice(cut)}
    </>
  );
};
