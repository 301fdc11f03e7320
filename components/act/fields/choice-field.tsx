import { useId } from 'react';
import { Glyph } from '@/components/ui/glyph';
import type { FieldSpec, Option } from '@/components/act/form';

interface ChoiceFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'choice' }>;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** One of a few, each told in full; what can't be chosen says why. What the chosen one would bring stands under it. */
export function ChoiceField({ spec, value, onChange }: ChoiceFieldProps) {
  const name = useId();
  const chosen = value === '' ? (spec.start ?? '') : value;
  return (
    <fieldset className="afield choices">
      <legend className="label">{spec.label}</legend>
      {spec.hint === undefined ? null : <p className="small dim">{spec.hint}</p>}
      {spec.options.map((option) =>
        option.barred === undefined ? (
          <div key={option.value}>
            <label className={option.value === chosen ? 'choice on' : 'choice'}>
              <input
                type="radio"
                name={name}
                value={option.value}
                checked={option.value === chosen}
                onChange={() => onChange(option.value)}
              />
              <Told option={option} />
            </label>
            {option.value === chosen ? <Brings lines={option.brings ?? []} /> : null}
          </div>
        ) : (
          <div key={option.value} className="choice barred">
            <i aria-hidden="true" />
            <span>
              <b className="nm">{option.label}</b>
              <span className="small dim hint">{option.barred}</span>
            </span>
            <Glyph name="gclosed" size={20} label="barred" />
          </div>
        ),
      )}
    </fieldset>
  );
}

function Told({ option }: { readonly option: Option }) {
  return (
    <span>
      <b className="nm">{option.label}</b>
      {option.hint === undefined ? null : <span className="small dim hint">{option.hint}</span>}
    </span>
  );
}

function Brings({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div className="cons">
      <p className="label">It would bring</p>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
