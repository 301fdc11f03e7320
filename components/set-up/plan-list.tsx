import { Glyph } from '@/components/ui/glyph';
import type { PlansView } from '@/lib/wire/views/set-up';

/** Revisions on which cars may be begun. */
export function PlanList({ view: { plans } }: { readonly view: PlansView }) {
  return (
    <section className="sheet" aria-labelledby="plans">
      <header>
        <h2 id="plans">Released</h2>
      </header>
      <ul className="lines">
        {plans.length === 0 ? (
          <li>
            <Glyph name="gap" />
            <span className="t">
              <b>No plan yet</b>
              <span className="small dim">A plan of stages and operations alone is enough to begin.</span>
            </span>
          </li>
        ) : null}
        {plans.map(({ hash, model, revision, says, cars }) => (
          <li key={hash}>
            <Glyph name="seal" />
            <span className="t">
              <b>
                {model}, revision {revision}
              </b>
              <span className="small dim">{says}</span>
              <span className="hash dim">{hash.slice(0, 12)}</span>
            </span>
            <span className="num">
              {cars} {cars === 1 ? 'car' : 'cars'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
