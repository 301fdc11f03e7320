import { useId } from 'react';
import type { FieldSpec } from '@/components/act/form';

interface CountFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'count' }>;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** How many: a number between two keys. */
export function CountField({ spec, value, onChange }: CountFieldProps) {
  const id = useId();
  const { least, most, start, label, hint } = spec;
  const shown = value === '' ? String(start) : value;
  const count = Number(shown);
  const step = (by: number): void => onChange(String(Math.min(most, Math.max(least, count + by))));
  return (
    <div className="afield count">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <span className="stepper">
        <button
          type="button"
          aria-label={`${label}: one less`}
          disabled={count <= least}
          onClick={() => step(-1)}
        >
          −
        </button>
        <input
          id={id}
          inputMode="numeric"
          value={shown}
          onChange={(event) => onChange(event.target.value.replace(/\D/g, '').slice(0, 3))}
          onBlur={() => step(0)}
        />
        <button
          type="button"
          aria-label={`${label}: one more`}
          disabled={count >= most}
          onClick={() => step(1)}
        >
          +
        </button>
        {hint === undefined ? null : <span className="small dim">{hint}</span>}
      </span>
    </div>
  );
}
