'use client';

import Link from 'next/link';
import { useId } from 'react';
import { Glyph } from '@/components/ui/glyph';
import type { AskedLine } from '@/lib/wire/views/my-work';

interface AskedProps {
  readonly title: string;
  readonly asks: readonly AskedLine[];
}

/** Questions to the lead, each with its answer, or the way to where it is answered. */
export function Asked({ title, asks }: AskedProps) {
  const heading = useId();
  return (
    <section className="sheet asked" aria-labelledby={heading}>
      <header>
        <h2 id={heading}>{title}</h2>
      </header>
      <ul>
        {asks.map(({ id, href, about, chassis, text, by, when, answer }) => (
          <li key={id}>
            <Glyph name="hint" />
            <div className="t">
              <p>
                <b>{text}</b>
              </p>
              <p className="small dim">
                {by}, {when}, about {about} of {chassis}
              </p>
              {answer === null ? null : (
                <p className="answer">
                  <b>{answer.text}</b>{' '}
                  <span className="small dim">
                    {answer.by}, {answer.when}
                  </span>
                </p>
              )}
            </div>
            {answer === null && title === 'You are asked' ? (
              <Link className="do" href={href} prefetch={false}>
                Answer <span className="vh">{text}</span> <Glyph name="arrow" size={16} />
              </Link>
            ) : answer === null ? (
              <span className="small dim">not answered yet</span>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
