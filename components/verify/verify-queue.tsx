'use client';

import Link from 'next/link';
import { PhotoStrip } from '@/components/photos/photo-strip';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { VerifyCar, VerifyLine, VerifyView } from '@/lib/wire/views/verify';
import './verify.css';

/** What waits for a second person, on all cars; what this one may not verify stands apart, with the reason. */
export function VerifyQueue({ view }: { readonly view: VerifyView }) {
  const { says, mine, others } = view;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Waits for your eyes</h1>
          <p className="dim">{says}</p>
        </div>
      </div>
      {mine.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="verified" size={32} />
          <div>
            <h2>Nothing to verify</h2>
            <p>
              {others.length === 0
                ? 'A joint that asks for a second person stands here the moment it is signed final.'
                : 'What waits stands below: it is for somebody else, or not ready to be verified.'}
            </p>
          </div>
        </section>
      ) : (
        mine.map((each) => <CarSheet key={each.car.id} group={each} />)
      )}
      {others.length === 0 ? null : (
        <section className="sheet notyou" aria-labelledby="not-for-you">
          <header>
            <h2 id="not-for-you">Not for you</h2>
            <span className="dim">and why</span>
          </header>
          <ul>
            {others.flatMap(({ car, lines }) =>
              lines.map((line) => (
                <li key={line.id}>
                  <Glyph name={line.sign} />
                  <span className="t">
                    <b>{line.name}</b>
                    <CarTag chassis={car.chassis} colour={car.colour} />
                    <PhotoStrip photos={line.photos ?? []} />
                  </span>
                  <span className="why">
                    {line.whyNot}
                    {line.waiting === '' ? null : <span className="small dim"> {line.waiting}</span>}
                  </span>
                  <SheetLink line={line} chassis={car.chassis} word="See it" />
                </li>
              )),
            )}
          </ul>
        </section>
      )}
    </>
  );
}

function CarSheet({ group: { car, lines } }: { readonly group: VerifyCar }) {
  const id = `car-${car.id}`;
  return (
    <section className="sheet queue" aria-labelledby={id}>
      <header>
        <h2 id={id}>
          <CarTag chassis={car.chassis} colour={car.colour} />
        </h2>
        <span className="dim">oldest first</span>
      </header>
      <ul>
        {lines.map((line) => (
          <li key={line.id}>
            <Glyph name={line.sign} size={32} />
            <span className="t">
              <b>{line.name}</b>
              {line.before === null ? null : <span className="small dim">{line.before}</span>}
              <PhotoStrip photos={line.photos ?? []} />
            </span>
            <span className="how">
              <b>{line.method}</b>
              <span className="small dim">{line.methodMore}</span>
            </span>
            <span className="who2">
              {line.by === '' ? null : (
                <>
                  <span className="cellbox">
                    <span className="vh">{line.by}</span>
                    <span aria-hidden="true">{line.byInitials}</span>
                  </span>{' '}
                  <span className="small dim">{line.when}</span>
                </>
              )}
            </span>
            <span className="age">
              <b>{line.waiting === '' ? 'being done now' : line.waiting}</b>
              {line.gate === null ? null : <span className="gatemark">{line.gate}</span>}
            </span>
            <SheetLink
              line={line}
              chassis={car.chassis}
              word={line.waiting === '' ? 'Watch' : 'Verify'}
              isAct
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface SheetLinkProps {
  readonly line: VerifyLine;
  readonly chassis: string;
  readonly word: string;
  readonly isAct?: boolean;
}

function SheetLink({ line, chassis, word, isAct = false }: SheetLinkProps) {
  return (
    <Link className={isAct ? 'btn go' : 'do'} href={line.href} prefetch={false}>
      {word}
      <span className="vh">
        {' '}
        {line.name} of {chassis}
      </span>
    </Link>
  );
}
