import { Glyph } from '@/components/ui/glyph';
import type { Proof } from '@/lib/wire/views/order';

/** Says that nothing cheaper exists only where that is proved; else how much cheaper it might be. */
export function ProofPanel({ proof }: { readonly proof: Proof }) {
  const { isProved, cost, bound, gap, lateCarDays, fewestLate, offers, lines, seconds } = proof;
  return (
    <section className="sheet proof" aria-labelledby="proof">
      <header>
        <Glyph name={isProved ? 'passed' : 'due'} />
        <h2 id="proof">{isProved ? 'Proved the cheapest' : 'The best found so far'}</h2>
      </header>
      <p className="body">
        {isProved
          ? `No cheaper order exists that is as early: ${lateCarDays === 0 ? 'no car waits for it.' : `each car waits as short as anybody can make it, ${String(lateCarDays)} car-days in all.`}`
          : `It is not proved that nothing is cheaper: another order may cost up to ${gap} less.`}
      </p>
      <dl className="rows body">
        <div>
          <dt>Cost</dt>
          <dd className="num">{cost}</dd>
        </div>
        <div>
          <dt>None costs less than</dt>
          <dd className="num">{bound}</dd>
        </div>
        <div>
          <dt>Gap</dt>
          <dd className="num">{gap}</dd>
        </div>
        <div>
          <dt>Late car-days, and the fewest possible</dt>
          <dd className="num">
            {lateCarDays}, {fewestLate}
          </dd>
        </div>
        <div>
          <dt>Looked over</dt>
          <dd className="num">
            {offers} offers, {lines} needs, {seconds} s
          </dd>
        </div>
      </dl>
    </section>
  );
}
