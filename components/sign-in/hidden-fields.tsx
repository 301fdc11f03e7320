interface HiddenFieldsProps {
  /** Shows that the form is ours. */
  readonly token: string;
  /** Where to go on. */
  readonly to: string;
}

export function HiddenFields({ token, to }: HiddenFieldsProps) {
  return (
    <>
      <input type="hidden" name="csrfToken" value={token} />
      <input type="hidden" name="callbackUrl" value={to} />
    </>
  );
}
