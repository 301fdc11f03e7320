import type { FieldSpec } from '@/components/act/form';
import { SelectField } from '@/components/ui/field';

interface PickFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'pick' }>;
  readonly value: string;
  readonly error: string | null;
  readonly onChange: (value: string) => void;
}

/** One of many: the device's own list, which knows gloves, keyboards and screen readers. */
export function PickField({ spec, value, error, onChange }: PickFieldProps) {
  const barred = spec.groups
    .flatMap(({ options }) => options)
    .filter((option) => option.barred !== undefined);
  return (
    <div className="afield">
      <SelectField
        label={spec.wanted ? spec.label : `${spec.label}, if it matters`}
        hint={spec.hint}
        error={error}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      >
        <option value="">{spec.wanted ? 'Choose' : 'None'}</option>
        {spec.groups.map((group) => (
          <optgroup key={group.label} label={group.label}>
            {group.options.map((option) => (
              <option key={option.value} value={option.value} disabled={option.barred !== undefined}>
                {option.label}
              </option>
            ))}
          </optgroup>
        ))}
      </SelectField>
      {barred.length === 0 ? null : (
        <details className="barreds">
          <summary>
            {barred.length === 1 ? 'One can’t be used' : `${String(barred.length)} can’t be used`}
          </summary>
          <ul className="small dim">
            {barred.map((option) => (
              <li key={option.value}>
                <b>{option.label}</b> {option.barred}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
