import type { FieldSpec, Values } from '@/components/act/form';
import { hardwareValue } from '@/components/act/forms/joints';
import { SelectField } from '@/components/ui/field';
import { lotWords } from '@/lib/wire/views/lot-words';

interface HardwareFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'hardware' }>;
  readonly values: Values;
  readonly onChange: (value: string) => void;
}

/** One line of a joint's hardware: as the plan says, from a lot, the old pieces again, or what may stand in for it. */
export function HardwareField({ spec, values, onChange }: HardwareFieldProps) {
  const { line } = spec;
  const isLoose = line.places.some(({ state }) => state === 'loose');
  return (
    <div className="afield">
      <SelectField
        label={spec.label}
        hint={spec.hint}
        value={hardwareValue(line, values)}
        onChange={(event) => onChange(event.target.value)}
      >
        {line.proposed.length === 0 ? null : (
          <option value="proposed">To be taken first: {lotWords(line, line.proposed)}</option>
        )}
        <option value="plan">
          {line.isOnce ? 'New ones, as the plan says; no lot written down' : 'As the plan says'}
        </option>
        {line.lots.map(({ id, says, whyNot }) => (
          <option key={id} value={`lot ${id}`} disabled={whyNot !== null}>
            {whyNot === null ? `Lot ${id}, ${says}` : `Lot ${id}: ${whyNot}`}
          </option>
        ))}
        {isLoose && !line.isOnce ? <option value="again">The old ones again</option> : null}
        {line.substitutes.flatMap(({ item, name, condition, asksLead, lots }) => [
          <option key={item} value={`instead ${item}`}>
            {`Instead: ${item} ${name}${condition === null ? '' : `, ${condition}`}${asksLead ? ' (a lead signs)' : ''}`}
          </option>,
          ...lots
            .filter(({ whyNot }) => whyNot === null)
            .map(({ id, says }) => (
              <option key={`${item} ${id}`} value={`instead ${item} ${id}`}>
                {`Instead: ${item} from lot ${says}`}
              </option>
            )),
        ])}
      </SelectField>
    </div>
  );
}
