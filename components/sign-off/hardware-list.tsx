import { Glyph } from '@/components/ui/glyph';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { HardwareView, JointView } from '@/lib/wire/views/sign-off';
import { these } from './model/words';

interface HardwareListProps {
  readonly lines: readonly HardwareView[];
  readonly joint: JointView;
  readonly claims: readonly FittedClaim[];
  /** Absent where nothing goes in with this act. */
  readonly onChange?: (line: HardwareView) => void;
}

/** What is in, what goes in new, and from which lot. */
export function HardwareList({ lines, joint, claims, onChange }: HardwareListProps) {
  return (
    <ul className="so-facts">
      {lines.map((line) => (
        <li key={line.item}>
          <Glyph name={line.isOnce ? 'onetime' : 'open'} size={20} />
          <span>
            <b>
              {line.quantity} × {line.name}
            </b>
            <br />
            <span className="small dim">
              {stateWords(line, joint)}
              {claimWords(line, claims)}
            </span>
          </span>
          {onChange !== undefined &&
          isToFit(line) &&
          (line.lots.length > 0 || line.substitutes.length > 0) ? (
            <button
              type="button"
              className="so-link"
              onClick={() => {
                onChange(line);
              }}
            >
              Which<span className="vh"> {line.name}</span>
            </button>
          ) : null}
        </li>
      ))}
    </ul>
  );
}

export const isToFit = ({ places }: HardwareView): boolean => places.some(({ state }) => state !== 'in');

const claimWords = ({ item }: HardwareView, claims: readonly FittedClaim[]): string => {
  const claim = claims.find((each) => (each.insteadOf ?? each.item) === item);
  if (claim === undefined) return '';
  const instead = claim.insteadOf === undefined ? '' : `${claim.item} instead`;
  const lot = claim.lot === undefined ? '' : `lot ${claim.lot}`;
  return `; ${[instead, lot].filter((part) => part !== '').join(', ')}`;
};

const stateWords = (line: HardwareView, joint: JointView): string => {
  const where = (state: HardwareView['places'][number]['state']): string | null => {
    const found = line.places.filter((place) => place.state === state);
    if (found.length === 0) return null;
    if (found.length === line.places.length) return '';
    return `${these(
      found.flatMap(({ fastener }) => fastener ?? []),
      joint.fasteners,
      joint.word,
    )}: `;
  };
  const lots = [
    ...new Set(line.places.flatMap(({ lot, state }) => (state === 'in' && lot !== null ? [lot] : []))),
  ];
  const parts = [
    said(where('in'), `in${lots.length === 0 ? '' : `, lot ${lots.join(', ')}`}`),
    said(where('empty'), 'goes in new'),
    said(where('loose'), line.isOnce ? 'loose; goes in again if it was never final' : 'loose; goes in again'),
    said(where('spent'), 'spent; a new one goes in'),
  ].flatMap((part) => part ?? []);
  return `${parts.join('; ')} (${line.rule})`;
};

const said = (where: string | null, what: string): string | null =>
  where === null ? null : `${where}${what}`;
