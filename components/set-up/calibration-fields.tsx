import { Field } from '@/components/ui/field';

/** A certificate as it is typed; empty days mean that there is none yet. */
interface CalibrationDraft {
  readonly on: string;
  readonly due: string;
  readonly certificate: string;
}

export const NO_CALIBRATION: CalibrationDraft = { on: '', due: '', certificate: '' };

/** The same as a command says it. */
export const calibrationOf = ({ on, due, certificate }: CalibrationDraft) => ({
  on,
  due,
  ...(certificate.trim() === '' ? {} : { certificate: certificate.trim() }),
});

interface CalibrationFieldsProps {
  readonly draft: CalibrationDraft;
  readonly onChange: (draft: CalibrationDraft) => void;
  /** A new tool may come without one. */
  readonly mayBeNone: boolean;
  readonly faultOf?: (field: string) => string | null;
}

/** When it was calibrated, until when that counts, and the number of its certificate. */
export function CalibrationFields({
  draft,
  onChange,
  mayBeNone,
  faultOf = () => null,
}: CalibrationFieldsProps) {
  const { on, due, certificate } = draft;
  return (
    <div className="three">
      <Field
        label="Calibrated on"
        hint={mayBeNone ? 'left open: no final with it yet' : 'by the certificate'}
        type="date"
        value={on}
        onChange={(event) => onChange({ ...draft, on: event.target.value })}
        error={faultOf('on')}
        required={!mayBeNone || due !== ''}
      />
      <Field
        label="Due again on"
        hint="that day still counts"
        type="date"
        value={due}
        min={on}
        onChange={(event) => onChange({ ...draft, due: event.target.value })}
        error={faultOf('due')}
        required={!mayBeNone || on !== ''}
      />
      <Field
        label="Certificate"
        hint="its number, if there is one"
        value={certificate}
        onChange={(event) => onChange({ ...draft, certificate: event.target.value })}
        error={faultOf('certificate')}
        maxLength={100}
        autoComplete="off"
      />
    </div>
  );
}
