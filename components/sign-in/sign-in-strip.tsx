import { Glyph } from '@/components/ui/glyph';
import { LineToServer } from '@/components/shop/line-to-server';

interface SignInStripProps {
  readonly shop: string;
  readonly place?: string;
}

/** The head of pages that one sees before signing in: whose shop it is, and no way in. */
export function SignInStrip({ shop, place }: SignInStripProps) {
  return (
    <header className="strip">
      <a className="mark" href="/sign-in">
        <Glyph name="final" />
        Slipmark
      </a>
      <span className="shopname">{shop}</span>
      <div className="who">
        <LineToServer isAtDoor />
        {place === undefined ? null : <span>{place}</span>}
      </div>
    </header>
  );
}
