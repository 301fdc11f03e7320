import { Glyph } from '@/components/ui/glyph';
import { asksOf } from './model/asks';
import type { Ask } from './model/asks';
import type { Desk } from './use-desk';

/** What was brought there without a reading, pass by pass: clicks of the wrench, and the passes before the last. */
export function Taps({ desk, current }: { readonly desk: Desk; readonly current: Ask | null }) {
  const { bench, view, now } = desk;
  const taps = asksOf(view.joint, bench.tool?.kind ?? null).filter((ask) => ask.kind === 'tap');
  const passes = [...new Set(taps.map(({ pass }) => pass))];
  const word = bench.tool?.kind === 'click' ? 'clicked' : 'drawn up';
  return passes.map((pass) => {
    const mine = taps.filter((tap) => tap.pass === pass);
    const done = mine.filter(({ id }) => now.sitting.given[id] !== undefined).length;
    return (
      <section key={pass} className="so-taps" aria-label={`Pass ${String(pass)}`}>
        <h3>
          {view.joint.passes === 1 ? 'Clicks' : `Pass ${String(pass)} of ${String(view.joint.passes)}`}
          <span className="small dim">
            {' '}
            {done === mine.length ? `all ${word}` : `${String(done)} of ${String(mine.length)} ${word}`}
          </span>
        </h3>
        <ol>
          {mine.map((tap) => {
            const isDone = now.sitting.given[tap.id] !== undefined;
            const state = isDone ? 'in' : tap.id === current?.id ? 'now' : 'todo';
            return (
              <li key={tap.id} className={state}>
                <span className="so-n">{tap.fastener}</span>
                {isDone ? <Glyph name="passed" size={20} label={word} /> : null}
              </li>
            );
          })}
        </ol>
      </section>
    );
  });
}
