import type { GlyphName, RailSign } from './glyph-drawings';

export type { GlyphName, RailSign };

interface GlyphProps {
  readonly name: GlyphName;
  readonly size?: 16 | 18 | 20 | 24 | 32 | 40;
  /** What it says to who can't see it. Without one it is decoration beside a word. */
  readonly label?: string;
  readonly className?: string;
}

/** A sign: colour follows its meaning, its shape alone must carry it. */
export function Glyph({ name, size = 24, label, className = '' }: GlyphProps) {
  const said = label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    <svg className={`g ${name} s${size} ${className}`.trim()} {...said}>
      <use href={`#g-${name}`} />
    </svg>
  );
}

/** One small head or box of a rail. The rail as a whole says in words what it shows. */
export function RailHead({ sign }: { readonly sign: RailSign }) {
  return (
    <svg className={`rh r-${sign}`} aria-hidden="true">
      <use href={`#r-${sign}`} />
    </svg>
  );
}
