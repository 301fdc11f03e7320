import type { FieldSpec } from '@/components/act/form';
import { Glyph } from '@/components/ui/glyph';

interface CautionsFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'cautions' }>;
  readonly read: boolean;
  readonly onChange: (value: string) => void;
}

/** The usual cautions, on hazard bars, read and ticked before the first step. */
export function CautionsField({ spec, read, onChange }: CautionsFieldProps) {
  return (
    <div className="cautions">
      <div className="ct">
        <h4>
          <Glyph name="caution" /> {spec.label}
        </h4>
        <dl>
          {spec.cautions.map(({ hazard, text }) => (
            <div key={hazard}>
              <dt>{hazard}.</dt> <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </div>
      <label className="read">
        <input
          type="checkbox"
          checked={read}
          onChange={(event) => onChange(event.target.checked ? 'yes' : '')}
        />
        I have read {spec.cautions.length === 1 ? 'it' : 'them'}
      </label>
    </div>
  );
}
