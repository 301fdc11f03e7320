import { Glyph } from '@/components/ui/glyph';
import type { DoubtView } from '@/lib/wire/views/sign-off';

/** Why it is not believed now, and what settles it. */
export function DoubtList({ doubts }: { readonly doubts: readonly DoubtView[] }) {
  if (doubts.length === 0) return null;
  return (
    <section className="refusal" aria-labelledby="so-doubts">
      <header>
        <Glyph name="disturbed" size={32} />
        <h3 id="so-doubts">In doubt</h3>
      </header>
      <ul>
        {doubts.map(({ says, clears }) => (
          <li key={says}>
            <Glyph name="disturbed" />
            <div>
              <b>{says}</b>
              <span className="fix small">{clears}</span>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
