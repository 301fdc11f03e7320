'use client';

import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { MyWorkView } from '@/lib/wire/views/my-work';
import { Asked } from './asked';
import { ClockBar } from './clock-bar';
import { Opened } from './opened';
import { WorkLists } from './work-lists';
import './my-work.css';

/** One person's work: what is at hand, opened; what comes next, and what it waits for. */
export function MyWork({ view }: { readonly view: MyWorkView }) {
  const { opened, lists, eyes, isSettled } = view;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>My work</h1>
          <p className="dim">{view.says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href="/kits" prefetch={false}>
            Kits to pick
          </Link>
          <Link className="btn" href="/verify" prefetch={false}>
            <Glyph name="critical" size={20} />
            {eyes === 0 ? 'Nothing to verify' : `${String(eyes)} to verify`}
          </Link>
        </p>
      </div>
      <ClockBar clocks={view.clocks} minutesToday={view.minutesToday} />
      {isSettled ? (
        <p className="settled" role="status">
          What the link named is settled by now, or is somebody else’s.
        </p>
      ) : null}
      {opened === null ? (
        <section className="sheet nothing">
          <Glyph name="hint" size={32} />
          <div>
            <h2>{lists.length === 0 ? 'Nothing is given to you' : 'Nothing of yours can begin now'}</h2>
            <p>
              {lists.length === 0
                ? 'A lead gives jobs and stages to people on each car’s page; then they stand here.'
                : 'What waits says for what; what was given to nobody may be begun by whoever can.'}
            </p>
          </div>
        </section>
      ) : (
        <Opened key={`${opened.car.id} ${opened.id}`} job={opened} />
      )}
      {view.asks.length === 0 ? null : <Asked title="You are asked" asks={view.asks} />}
      <WorkLists lists={lists} />
    </>
  );
}
