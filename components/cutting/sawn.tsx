'use client';

import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import type { CutSawn } from '@/lib/wire/views/cutting';
import './sawing.css';

/** What is sawn and not built in: in no list any more, until somebody says that a piece is to be cut again. */
export function Sawn({ sawn }: { readonly sawn: readonly CutSawn[] }) {
  const sending = useSending();
  if (sawn.length === 0) return null;
  return (
    <section className="sheet sawnpieces" aria-labelledby="sawn">
      <header>
        <h2 id="sawn">Sawn, and not built in yet</h2>
        <p className="dim">
          They are in no list any more. What the work uses up leaves the books when it is finished.
        </p>
      </header>
      <ul>
        {sawn.map(({ key, name, part, codes, car, length, count, by, again }) => (
          <li key={key}>
            <span className="num">
              <b>{count} ×</b>
            </span>
            <span className="t">
              <b>{part}</b>, {length} mm of {name}{' '}
              {codes.map((code) => (
                <span key={code} className="small dim nb">
                  {code}{' '}
                </span>
              ))}
              <span className="small dim">{by}</span>
            </span>
            <CarTag chassis={car.chassis} colour={car.colour} />
            <Button
              held={sending.isBusy}
              onClick={() =>
                void sending.send(
                  { type: 'recut-pieces', item: again.item, pieces: [{ ...again.piece, count: 1 }] },
                  `One ${part} for ${car.chassis} is to be cut again.`,
                )
              }
            >
              Cut one again
              <span className="vh">
                : {part}, {length} mm for {car.chassis}
              </span>
            </Button>
          </li>
        ))}
      </ul>
      <AnswerLines sending={sending} done="It stands in the list again." />
    </section>
  );
}
