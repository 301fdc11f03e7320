'use client';

import { BareStrip } from '@/components/shop/bare-strip';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';

interface ErrorPageProps {
  readonly error: unknown;
  /** Asks the server for the page again. */
  readonly retry: () => void;
}

/** Something broke on our side. It says what is certain, and gives a number by which the log finds it. */
export default function ErrorPage({ error, retry }: ErrorPageProps) {
  const number = numberOf(error);
  return (
    <>
      <BareStrip />
      <main className="pg">
        <section className="refusal notice" role="alert">
          <header>
            <Glyph name="failed" size={32} />
            <h1>This page could not be made</h1>
          </header>
          <div className="in">
            <p>
              <b>Whatever was recorded before stays recorded.</b> If an act of yours had no answer yet, look
              at the car’s log before you give it again.
            </p>
            {number === null ? null : (
              <dl className="saynumber">
                <dt>Say this number</dt>
                <dd className="num">{number}</dd>
              </dl>
            )}
            <p className="acts">
              <Button onClick={() => retry()}>Try again</Button>
              <a className="btn" href="/board">
                Track board
              </a>
            </p>
          </div>
        </section>
      </main>
    </>
  );
}

/** By this number the server's own log finds what happened; the browser is told no more than that. */
const numberOf = (error: unknown): string | null =>
  error instanceof Error && 'digest' in error && typeof error.digest === 'string'
    ? error.digest.replace(/(\d{3})(?=\d)/g, '$1 ')
    : null;
