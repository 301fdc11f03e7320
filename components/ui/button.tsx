import type { ComponentProps } from 'react';

interface ButtonProps extends ComponentProps<'button'> {
  /** `main` is filled, one to a view; `stop` holds something back; `quiet` weighs least. */
  readonly kind?: 'plain' | 'main' | 'quiet' | 'stop';
  /** Held back: it stays in place and can be focused, so that the reason beside it is read; pressing does nothing. */
  readonly held?: boolean;
}

const CLASS = { plain: '', main: ' main', quiet: ' quiet', stop: ' stopb' } as const;

export function Button({
  kind = 'plain',
  held = false,
  className = '',
  type = 'button',
  onClick,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={held ? 'button' : type}
      className={`btn${CLASS[kind]} ${className}`.trim()}
      aria-disabled={held || undefined}
      onClick={held ? undefined : onClick}
    />
  );
}
