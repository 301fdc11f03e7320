import type { FieldSpec, Values } from '@/components/act/form';
import { TextField } from '@/components/ui/field';
import { CautionsField } from './cautions-field';
import { ChoiceField } from './choice-field';
import { CountField } from './count-field';
import { FastenersField } from './fasteners-field';
import { HardwareField } from './hardware-field';
import { HoldClock } from './hold-clock';
import { ManyField } from './many-field';
import { PhotoField } from './photo-field';
import { PickField } from './pick-field';
import { TextPicks } from './text-picks';
import { ValueField } from './value-field';

interface FormFieldProps {
  readonly spec: FieldSpec;
  readonly values: Values;
  readonly onChange: (name: string, value: string | readonly string[]) => void;
  /** What is wrong with it, from the door. */
  readonly error: string | null;
}

/** One field of a form, by its kind. */
export function FormField({ spec, values, onChange, error }: FormFieldProps) {
  const typed = values[spec.name];
  const value = typeof typed === 'string' ? typed : '';
  const chosen = typeof typed === 'string' || typed === undefined ? [] : typed;
  const set = (next: string | readonly string[]): void => onChange(spec.name, next);
  switch (spec.kind) {
    case 'text':
      return (
        <div className="afield">
          {spec.picks === undefined ? null : <TextPicks picks={spec.picks} value={value} onPick={set} />}
          <TextField
            label={spec.wanted ? spec.label : `${spec.label}, if it matters`}
            hint={spec.hint}
            error={error}
            value={value}
            rows={1}
            onChange={(event) => set(event.target.value)}
          />
        </div>
      );
    case 'count':
      return <CountField spec={spec} value={value} onChange={set} />;
    case 'choice':
      return <ChoiceField spec={spec} value={value} onChange={set} />;
    case 'pick':
      return <PickField spec={spec} value={value} error={error} onChange={set} />;
    case 'many':
      return <ManyField spec={spec} chosen={typed === undefined ? spec.start : chosen} onChange={set} />;
    case 'fasteners':
      return <FastenersField spec={spec} chosen={chosen} onChange={set} />;
    case 'value':
      return <ValueField spec={spec} value={value} error={error} onChange={set} />;
    case 'hardware':
      return <HardwareField spec={spec} values={values} onChange={set} />;
    case 'cautions':
      return <CautionsField spec={spec} read={value === 'yes'} onChange={set} />;
    case 'clock':
      return <HoldClock spec={spec} />;
    case 'photo':
      return <PhotoField spec={spec} onChange={onChange} />;
  }
}
