'use client';

import Link from 'next/link';
import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { KitPickLine, KitView } from '@/lib/wire/views/kits';
import { KitLines } from './kit-lines';
import { KitNow } from './kit-now';
import './kits.css';

/** One line at a time, in the order of the shelves; the rest below, each a tap away. */
export function KitPick({ view }: { readonly view: KitView }) {
  const { car, key, says, lines } = view;
  const [chosen, setChosen] = useState<string | null>(null);
  const [passed, setPassed] = useState<ReadonlySet<string>>(new Set());
  const now =
    lines.find(({ item }) => item === chosen) ??
    lines.find(({ item, isPicked }) => !isPicked && !passed.has(item)) ??
    null;
  const number = now === null ? lines.length : lines.indexOf(now) + 1;
  return (
    <>
      <div className="kithead">
        <div>
          <CarTag chassis={car.chassis} colour={car.colour} />
          <h1>Kit for {key}</h1>
          <p className="small dim">{says}</p>
        </div>
        {lines.length === 0 ? null : (
          <p className="nr num">
            <b>{number}</b> of {lines.length}
          </p>
        )}
      </div>
      <div className="kitcols">
        {now === null ? (
          <Done view={view} />
        ) : (
          <KitNow
            key={`${now.item} ${now.inBox}`}
            view={view}
            line={now}
            onPassed={(isShort) => {
              setChosen(null);
              if (isShort) setPassed(new Set([...passed, now.item]));
            }}
          />
        )}
        {lines.length === 0 ? null : (
          <div>
            <KitLines lines={lines} now={now?.item ?? null} onChoose={setChosen} />
            <p className="small dim">
              In the order of the shelves. What lies in the box is put aside for this car; it stays on the
              books until it is fitted.
            </p>
          </div>
        )}
      </div>
    </>
  );
}

const isOpen = ({ isPicked }: KitPickLine): boolean => !isPicked;

/** Nothing is left to pick, or all that is there is in the box. */
function Done({ view: { car, operation, lines, isOver, workHref } }: { readonly view: KitView }) {
  const sending = useSending();
  const open = lines.filter(isOpen).length;
  const hasAny = lines.some(({ inBox }) => inBox !== '0');
  return (
    <section className="sheet now" aria-labelledby="kit-done">
      <h2 id="kit-done">
        <Glyph name={open === 0 ? 'passed' : 'gap'} />{' '}
        {isOver
          ? 'This work takes nothing more'
          : open === 0
            ? 'The kit is whole'
            : `The kit stays open for ${open === 1 ? 'one line' : `${String(open)} lines`}`}
      </h2>
      {lines.filter(isOpen).map(({ item, name, left, lacks, coming }) => (
        <p key={item}>
          <b>
            {left} × {name}
          </b>{' '}
          <span className="dim">{lacks === '' ? coming : lacks}</span>
        </p>
      ))}
      <AnswerLines sending={sending} done="It is on the shelf again." />
      <p className="acts">
        <Link className="btn main big" href="/kits" prefetch={false}>
          Next kit
        </Link>
      </p>
      <p className="acts">
        <Link className="btn" href={workHref} prefetch={false}>
          To the work
        </Link>{' '}
        {hasAny ? (
          <Button
            held={sending.isBusy}
            onClick={() =>
              void sending.send(
                { type: 'empty-kit', car: car.id, operation },
                'All of the kit is on the shelf again.',
              )
            }
          >
            Put all of it back
          </Button>
        ) : null}
      </p>
    </section>
  );
}
