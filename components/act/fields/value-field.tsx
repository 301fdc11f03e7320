import { useId } from 'react';
import type { FieldSpec } from '@/components/act/form';
import { placeOfText } from '@/components/act/value-place';
import type { ValuePlace } from '@/components/act/value-place';
import { Glyph } from '@/components/ui/glyph';

interface ValueFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'value' }>;
  readonly value: string;
  readonly error: string | null;
  readonly onChange: (value: string) => void;
}

/** One value that a check asks: a number with its limit and unit, or whether something is so. */
export function ValueField({ spec, value, error, onChange }: ValueFieldProps) {
  return spec.value.kind === 'statement' ? (
    <StatementField spec={spec} value={value} onChange={onChange} />
  ) : (
    <NumberField spec={spec} value={value} error={error} onChange={onChange} />
  );
}

const WORDS: Readonly<Record<ValuePlace, string>> = {
  inside: 'inside',
  outside: 'outside: it fails',
  unreadable: 'a number is asked',
  empty: '',
};

function NumberField({ spec, value, error, onChange }: ValueFieldProps) {
  const id = useId();
  if (spec.value.kind !== 'window') return null;
  const place = placeOfText(spec.value, value.trim());
  return (
    <div className="afield val" data-place={place}>
      <label className="vname" htmlFor={id}>
        <b>{spec.label}</b> <span className="small dim">{spec.value.limit}</span>
      </label>
      <span className="vin">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={value}
          aria-describedby={`${id}-place`}
          aria-invalid={place === 'outside' || place === 'unreadable' || error !== null || undefined}
          onChange={(event) => onChange(event.target.value.replace(',', '.'))}
        />
        <span>{spec.value.unit}</span>
      </span>
      <span id={`${id}-place`} className="place" aria-live="polite">
        {place === 'outside' ? <Glyph name="failed" size={20} /> : null}
        {place === 'inside' ? <Glyph name="passed" size={20} /> : null} {error ?? WORDS[place]}
      </span>
    </div>
  );
}

function StatementField({ spec, value, onChange }: Omit<ValueFieldProps, 'error'>) {
  const name = useId();
  if (spec.value.kind !== 'statement') return null;
  return (
    <fieldset className="afield val">
      <legend className="vname">
        <b>{spec.label}</b> <span className="small dim">{spec.value.limit}</span>
      </legend>
      <span className="yesno">
        {(
          [
            ['yes', 'It is so'],
            ['no', 'It is not'],
          ] as const
        ).map(([answer, says]) => (
          <label key={answer} data-on={value === answer || undefined} data-no={answer === 'no' || undefined}>
            <input
              type="radio"
              name={name}
              value={answer}
              checked={value === answer}
              onChange={() => onChange(answer)}
            />
            {says}
          </label>
        ))}
      </span>
    </fieldset>
  );
}
