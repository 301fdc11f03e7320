import { Glyph } from '@/components/ui/glyph';
import type { ReactNode } from 'react';
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
              <b>{coded(says)}</b>
              <span className="fix small">{coded(clears)}</span>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A code never breaks across lines. */
const coded = (text: string): ReactNode =>
  text.split(/(\b[A-Z]{1,3}\d{0,2}-\d[\w@]*)/).map((part, index) =>
    index % 2 === 1 ? (
      <span key={index} className="nb">
        {part}
      </span>
    ) : (
      part
    ),
  );
