'use client';

import { useId, useState } from 'react';
import type { FieldSpec } from '@/components/act/form';
import { Field } from '@/components/ui/field';

interface ManyFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'many' }>;
  readonly chosen: readonly string[];
  readonly onChange: (value: readonly string[]) => void;
}

/** More than this is not shown whole: it is searched. */
const ALL_SHOWN = 12;

/** Several of some. A short list is shown whole; a long one shows the chosen, and what is searched for. */
export function ManyField({ spec, chosen, onChange }: ManyFieldProps) {
  const name = useId();
  const [sought, setSought] = useState('');
  const isLong = spec.options.length > ALL_SHOWN;
  const words = sought.toLowerCase();
  const shown = spec.options.filter(
    ({ value, label }) =>
      !isLong || chosen.includes(value) || (words !== '' && label.toLowerCase().includes(words)),
  );
  const toggle = (value: string): void =>
    onChange(chosen.includes(value) ? chosen.filter((each) => each !== value) : [...chosen, value]);
  return (
    <fieldset className="afield choices">
      <legend className="label">{spec.label}</legend>
      {isLong ? (
        <Field
          label="Look for"
          hint={spec.hint}
          value={sought}
          onChange={(event) => setSought(event.target.value)}
        />
      ) : null}
      <div className="boxes">
        {shown.slice(0, ALL_SHOWN + chosen.length).map(({ value, label }) => (
          <label key={value} className={chosen.includes(value) ? 'choice on' : 'choice'}>
            <input
              type="checkbox"
              name={name}
              value={value}
              checked={chosen.includes(value)}
              onChange={() => toggle(value)}
            />
            <b className="nm">{label}</b>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
