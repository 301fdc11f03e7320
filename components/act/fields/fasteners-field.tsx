import type { FieldSpec } from '@/components/act/form';

interface FastenersFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'fasteners' }>;
  readonly chosen: readonly string[];
  readonly onChange: (value: readonly string[]) => void;
}

/** Which of a joint's fasteners: hexagons, as on its sheet. */
export function FastenersField({ spec, chosen, onChange }: FastenersFieldProps) {
  return (
    <fieldset className="afield">
      <legend className="label">{spec.label}</legend>
      {spec.hint === undefined ? null : <p className="small dim">{spec.hint}</p>}
      <div className="nuts">
        {spec.numbers.map((number) => {
          const value = String(number);
          const isOn = chosen.includes(value);
          return (
            <button
              key={number}
              type="button"
              aria-pressed={isOn}
              aria-label={`no. ${value}`}
              onClick={() => onChange(isOn ? chosen.filter((each) => each !== value) : [...chosen, value])}
            >
              <span>{value}</span>
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
