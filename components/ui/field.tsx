import { useId } from 'react';
import type { ComponentProps, ReactNode } from 'react';
import { Glyph } from './glyph';

interface Said {
  readonly label: ReactNode;
  /** Stands under the label, for what must be known before typing. */
  readonly hint?: ReactNode;
  /** What is wrong with what was given. */
  readonly error?: string | null;
}

/** A labelled input: its hint and its error are read with it. */
export function Field({
  label,
  hint,
  error = null,
  className = '',
  ...rest
}: Said & ComponentProps<'input'>) {
  const id = useId();
  return (
    <Labelled id={id} label={label} hint={hint} error={error} className={className}>
      <input {...rest} id={id} {...described(id, hint, error)} />
    </Labelled>
  );
}

/** The same for more than one line. */
export function TextField({
  label,
  hint,
  error = null,
  className = '',
  ...rest
}: Said & ComponentProps<'textarea'>) {
  const id = useId();
  return (
    <Labelled id={id} label={label} hint={hint} error={error} className={className}>
      <textarea rows={2} {...rest} id={id} {...described(id, hint, error)} />
    </Labelled>
  );
}

/** The same for one of a few. */
export function SelectField({
  label,
  hint,
  error = null,
  className = '',
  ...rest
}: Said & ComponentProps<'select'>) {
  const id = useId();
  return (
    <Labelled id={id} label={label} hint={hint} error={error} className={className}>
      <select {...rest} id={id} {...described(id, hint, error)} />
    </Labelled>
  );
}

const described = (id: string, hint: ReactNode, error: string | null) => ({
  'aria-invalid': error === null ? undefined : true,
  'aria-describedby':
    [hint === undefined ? '' : `${id}-hint`, error === null ? '' : `${id}-error`].join(' ').trim() ||
    undefined,
});

interface LabelledProps extends Said {
  readonly id: string;
  readonly className: string;
  readonly children: ReactNode;
}

function Labelled({ id, label, hint, error, className, children }: LabelledProps) {
  return (
    <div className={`fld${error === null ? '' : ' bad'} ${className}`.trim()}>
      <label className="label" htmlFor={id}>
        {label}
      </label>
      {hint === undefined ? null : (
        <span className="small dim" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {children}
      {error === null ? null : (
        <span className="msg" id={`${id}-error`}>
          <Glyph name="failed" size={18} /> {error}
        </span>
      )}
    </div>
  );
}
