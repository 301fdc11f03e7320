import Link from 'next/link';
import { Button } from '@/components/ui/button';
import { carHref } from './head';
import { DoubtList } from './doubt-list';
import { allOf, these } from './model/words';
import { Standing } from './standing';
import type { Work } from './work';

/** A doubt that only new hardware settles: open it, and begin a new cycle. */
export function RenewWork({ desk, notes, onOpened }: Work) {
  const { view } = desk;
  const { joint, doubts } = view;
  const named = [
    ...new Set(doubts.filter(({ remedy }) => remedy === 'renew').flatMap(({ fasteners }) => fasteners ?? [])),
  ];
  const asked = named.length === 0 ? joint.order : named;
  const which = these(asked, joint.fasteners, joint.word);
  return (
    <>
      <div className="so-mid">
        {notes.below}
        {notes.above}
        <DoubtList doubts={doubts} />
        <Standing desk={desk} />
      </div>
      <section className="so-pad" aria-label="Renew" data-ready={desk.now.isReady || undefined}>
        <section className="sheet so-plain">
          <h2>Renew {which}</h2>
          <p>
            Loosen {which}, fit new hardware there, then make the full pass on{' '}
            {joint.fasteners === 1 ? 'it' : allOf(joint.fasteners, joint.word)}. A new cycle begins with the
            opening.
          </p>
        </section>
        <div className="so-sign">
          <Button
            kind="stop"
            className="so-bigact"
            onClick={() => {
              onOpened(asked, `to renew ${which}`);
            }}
          >
            Opened: renew {which}
          </Button>
        </div>
      </section>
    </>
  );
}

/** Nothing is asked of it now: what it stands by, and what could still be said. */
export function RestWork({ desk, notes, onOther }: Work) {
  const { view } = desk;
  const { joint } = view;
  const isNoValue = joint.specification.kind === 'no-value-yet' && joint.method !== 'sequence';
  return (
    <>
      <div className="so-mid">
        {notes.below}
        {notes.above}
        <DoubtList doubts={view.doubts} />
        <Standing desk={desk} />
      </div>
      <section className="so-pad" aria-label="State" data-ready={desk.now.isReady || undefined}>
        <section className="sheet so-plain">
          <h2>{isNoValue ? 'Snug is all it can be' : 'Nothing is asked now'}</h2>
          <p>
            {isNoValue
              ? 'The plan has no torque for it yet: a plan revision must bring the value before it can be final.'
              : `It is ${joint.level}, and that is what the plan asks by the gate of ${joint.dueStage}.`}
          </p>
        </section>
        <div className="so-sign">
          {onOther}
          <Link className="btn so-bigact" href={carHref(view)}>
            Back to {view.car.chassis}
          </Link>
        </div>
      </section>
    </>
  );
}
