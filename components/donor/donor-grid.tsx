'use client';

import Link from 'next/link';
import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { GRADES } from '@/lib/domain/car/component-rows';
import type { DonorPartLine, DonorView } from '@/lib/wire/views/donor';
import { DonorHardwareSheet } from './donor-hardware';
import { DonorRow } from './donor-row';
import { DonorVehicleSheet } from './donor-vehicle';
import './donor.css';

/** As expected, as found: one tap a part, down the list without looking for anything. */
export function DonorGrid({ view }: { readonly view: DonorView }) {
  const { car, says, parts } = view;
  const href = `/cars/${encodeURIComponent(car.id)}`;
  return (
    <>
      <div className="pagetop">
        <div>
          <CarTag chassis={car.chassis} colour={car.colour} />
          <h1>Donor for {car.chassis}</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <AsUsual car={car.id} parts={parts} />
          <Link className="btn" href={href} prefetch={false}>
            The car
          </Link>
          <Link className="btn" href="/trips" prefetch={false}>
            Outside work
          </Link>
        </p>
      </div>
      {parts.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="hint" size={32} />
          <div>
            <h2>Nothing to grade</h2>
            <p>A part with the origin “donor” in the plan stands here.</p>
          </div>
        </section>
      ) : (
        <div className="donorcols">
          <section className="sheet" aria-labelledby="donor-parts">
            <header>
              <h2 id="donor-parts">As found</h2>
              <span className="small dim">
                the dot is what is usual; with a keyboard 1 to 4 grades and goes on
              </span>
            </header>
            <ol className="grades">
              {parts.map((part) => (
                <DonorRow key={part.key} car={car.id} me={view.me.id} part={part} />
              ))}
            </ol>
          </section>
          <DonorAside view={view} />
        </div>
      )}
    </>
  );
}

/** Everything that nobody has graded, as the plan expects it: the odd ones were tapped before. */
function AsUsual({ car, parts }: { readonly car: string; readonly parts: readonly DonorPartLine[] }) {
  const [isOpen, setOpen] = useState(false);
  const sending = useSending();
  const rest = parts.filter(({ grade, usual, isOpen: may }) => grade === null && usual !== null && may);
  if (rest.length === 0) return null;
  const title = `Grade the other ${rest.length === 1 ? 'one' : String(rest.length)} as usual`;
  return (
    <>
      <Button onClick={() => setOpen(true)}>{title}</Button>
      {isOpen ? (
        <AskDialog
          title={title}
          act="They are as usual"
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="Graded." />}
          onAct={() =>
            void sending.send(
              {
                type: 'grade-parts',
                car,
                parts: rest.map(({ key, usual }) => ({ part: key, grade: usual ?? 'reuse' })),
              },
              `${String(rest.length)} parts are graded as usual.`,
              () => setOpen(false),
            )
          }
          onClose={() => setOpen(false)}
        >
          <p>Each of these was looked at and is what the plan expects of it:</p>
          <ul className="restlist">
            {rest.map(({ key, name, usual }) => (
              <li key={key}>
                <span className="nb">{key}</span> {name}, <b>{usual}</b>
              </li>
            ))}
          </ul>
        </AskDialog>
      ) : null}
    </>
  );
}

function DonorAside({ view }: { readonly view: DonorView }) {
  const { car, parts, need, toSend, findings } = view;
  return (
    <div className="stack">
      <DonorVehicleSheet view={view} />
      <section className="sheet" aria-labelledby="donor-tally">
        <header>
          <h2 id="donor-tally">So far</h2>
        </header>
        <dl className="tally">
          {GRADES.map((grade) => (
            <div key={grade}>
              <dt>{grade}</dt>
              <dd className="num">{parts.filter((part) => part.grade === grade).length}</dd>
            </div>
          ))}
        </dl>
      </section>
      <DonorHardwareSheet view={view} />
      <section className="sheet" aria-labelledby="donor-need">
        <header>
          <h2 id="donor-need">To be bought for it</h2>
          <Link className="btn" href="/hardware" prefetch={false}>
            Demand
          </Link>
        </header>
        {need.length === 0 ? (
          <p className="idle dim">Nothing that was graded so far.</p>
        ) : (
          <ul className="asidelist">
            {need.map(({ key, name, says, isUnusual }) => (
              <li key={key} className={isUnusual ? 'odd' : undefined}>
                <Glyph name="owed" size={20} />
                <span>
                  <b>
                    {name} (<span className="nb">{key}</span>)
                  </b>
                  <span className="small dim">
                    {says}
                    {isUnusual ? '; the plan did not expect it' : ''}
                  </span>
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
      {toSend.length === 0 ? null : (
        <section className="sheet" aria-labelledby="donor-out">
          <header>
            <h2 id="donor-out">Waits for a trip</h2>
            <Link className="btn" href="/trips" prefetch={false}>
              Trips
            </Link>
          </header>
          <ul className="asidelist">
            {toSend.map(({ key, name, days }) => (
              <li key={key}>
                <Glyph name="vendor" size={20} />
                <span>
                  <b>
                    {name} (<span className="nb">{key}</span>)
                  </b>
                  <span className="small dim">{days} there</span>
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {findings.length === 0 ? null : (
        <section className="sheet" aria-labelledby="donor-found">
          <header>
            <h2 id="donor-found">Findings</h2>
          </header>
          <ul className="asidelist">
            {findings.map(({ id, text, href }) => (
              <li key={id}>
                <Glyph name="finding" size={20} />
                <Link href={href} prefetch={false}>
                  <b className="nb">{id}</b> {text}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <p className="small dim">
        Graded <b>reuse</b> a part is here and good, where the plan asks for a look once that is said;{' '}
        <b>refurbish</b> waits until it is done, here or outside; <b>replace</b> and <b>scrap</b> put another
        one on the demand for {car.chassis}. What is found later, on the car, is a finding.
      </p>
    </div>
  );
}
