'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import type { KitFault } from '@/lib/domain/car/kit-rows';
import type { KitPickLine, KitView } from '@/lib/wire/views/kits';
import { HowMany } from './how-many';
import { shortOf, takenFrom } from './sources';

interface KitNowProps {
  readonly view: KitView;
  readonly line: KitPickLine;
  /** On to the next; `isShort` leaves this one open. */
  readonly onPassed: (isShort: boolean) => void;
}

const FAULTS: readonly (readonly [KitFault, string])[] = [
  ['wrong', 'Another part lies in the bin'],
  ['damaged', 'What is in the box is damaged'],
  ['missing', 'It is not there'],
];

/** The line at hand: where, how many, and one large button that says what it does. */
export function KitNow({ view, line, onPassed }: KitNowProps) {
  const { car, operation, run } = view;
  const { item, name, unit, bin, left, inBox, isPicked, lacks, says, from } = line;
  const [mode, setMode] = useState<'pick' | 'fewer' | 'fault'>('pick');
  const sending = useSending();
  const kit = { car: car.id, operation, run };
  const many = unit === '' ? left : `${left} ${unit}`;

  const pick = (quantity: string, then: () => void): Promise<void> =>
    sending.send(
      { type: 'pick-kit', ...kit, lines: takenFrom(line, quantity) },
      `${quantity} of ${name} in the box.`,
      then,
    );

  /** The bin gave fewer than its books say: what there was is in the box and the bin is down, in one act. */
  const fewer = (quantity: string): Promise<void> =>
    sending.send(
      { type: 'pick-kit', ...kit, lines: takenFrom(line, quantity), emptied: [item] },
      `${quantity} of ${name} in the box; the bin is put down as empty.`,
      () => onPassed(true),
    );

  if (mode === 'fewer')
    return (
      <HowMany
        line={line}
        work={view.key}
        isBusy={sending.isBusy}
        said={<AnswerLines sending={sending} done="" />}
        onBack={() => setMode('pick')}
        onHas={(quantity) =>
          void (shortOf(left, quantity) === '0' ? pick(quantity, () => onPassed(false)) : fewer(quantity))
        }
      />
    );

  return (
    <section className="now" aria-labelledby="kit-now">
      <div className="top">
        {bin === null ? <span className="nobin">no bin</span> : <b className="bin">{bin}</b>}
        <span className="many num">
          {isPicked ? inBox : left}
          <small> {unit === '' ? '×' : unit}</small>
        </span>
      </div>
      <div>
        <h2 id="kit-now">{name}</h2>
        <p className="small dim">{says}</p>
        {lacks === '' ? null : <p className="small stop">{lacks}</p>}
      </div>
      {mode === 'fault' ? (
        <>
          <p>What is the matter?</p>
          <div className="three one">
            {FAULTS.map(([what, words]) => (
              <Button
                key={what}
                held={sending.isBusy}
                onClick={() =>
                  void sending.send(
                    { type: 'report-kit-line', ...kit, item, what },
                    `${name}: ${words}. The kit stays open for it.`,
                    () => onPassed(true),
                  )
                }
              >
                {words}
              </Button>
            ))}
            <Button kind="quiet" onClick={() => setMode('pick')}>
              Back
            </Button>
          </div>
        </>
      ) : (
        <>
          {isPicked ? (
            <Button
              className="big"
              held={sending.isBusy}
              onClick={() =>
                void sending.send(
                  { type: 'empty-kit', ...kit, lines: [{ item, quantity: inBox }] },
                  `${name} is on the shelf again.`,
                )
              }
            >
              Put {inBox} back on the shelf
            </Button>
          ) : (
            <Button
              kind="main"
              className="big"
              held={sending.isBusy}
              onClick={() => void pick(left, () => onPassed(false))}
            >
              {many} in the box
            </Button>
          )}
          <div className="three">
            <Button held={isPicked} onClick={() => setMode('fewer')}>
              Fewer
            </Button>
            <Button onClick={() => setMode('fault')}>Wrong part</Button>
            <Button
              held={sending.isBusy}
              onClick={() =>
                void sending.send(
                  {
                    type: 'draw-stock',
                    item,
                    ...(from[0]?.lot === null || from[0] === undefined ? {} : { lot: from[0].lot }),
                    quantity: '1',
                    reason: 'extra-taken',
                    forCar: car.id,
                  },
                  `One extra of ${name} is taken for ${car.chassis}.`,
                )
              }
            >
              One extra
            </Button>
          </div>
        </>
      )}
      <AnswerLines sending={sending} done="Recorded." />
    </section>
  );
}
