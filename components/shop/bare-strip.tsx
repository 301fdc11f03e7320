import { Glyph } from '@/components/ui/glyph';

/** The head of a page that knows nobody and nothing: only the way back to the shop. */
export function BareStrip() {
  return (
    <header className="strip">
      {/* A plain link: it must work where the page's own script is what broke. */}
      <a className="mark" href="/board">
        <Glyph name="final" />
        Slipmark
      </a>
    </header>
  );
}
