import { Glyph } from '@/components/ui/glyph';
import { Unbroken } from '@/components/ui/unbroken';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { lotWords } from '@/lib/wire/views/lot-words';
import type { HardwareView, JointView } from '@/lib/wire/views/sign-off';
import { claimsFor } from './model/fitted';
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
              <Unbroken says={`${stateWords(line, joint)}${claimWords(line, claims)}`} />
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

/** From which lot, and where that lies. */
const claimWords = (line: HardwareView, chosen: readonly FittedClaim[]): string => {
  const claims = claimsFor(line, chosen);
  const other = claims.find(({ insteadOf }) => insteadOf !== undefined);
  const [only, ...more] = claims;
  const lots = line.substitutes.find(({ item }) => item === other?.item)?.lots ?? line.lots;
  const lying = more.length === 0 ? lots.find(({ id }) => id === only?.lot)?.says : undefined;
  const words = [
    other === undefined ? '' : `${other.item} instead`,
    lotWords(line, claims),
    lying ?? '',
  ].filter((part) => part !== '');
  return words.length === 0 ? '' : `; ${words.join(', ')}`;
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
