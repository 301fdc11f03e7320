import { Glyph } from '@/components/ui/glyph';

interface SignInStripProps {
  readonly shop: string;
  readonly place?: string;
}

/** The head of pages that one sees before signing in: whose shop it is, no way in, and no line, which nobody has yet. */
export function SignInStrip({ shop, place }: SignInStripProps) {
  return (
    <header className="strip">
      <a className="mark" href="/sign-in">
        <Glyph name="final" />
        Slipmark
      </a>
      <span className="shopname">{shop}</span>
      {place === undefined ? null : (
        <div className="who">
          <span>{place}</span>
        </div>
      )}
    </header>
  );
}
