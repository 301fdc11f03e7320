'use client';

import Link from 'next/link';
import { useNow } from '@/components/act/use-now';
import { Glyph } from '@/components/ui/glyph';
import { durationWords } from '@/lib/wire/views/duration';
import type { RunningClockView } from '@/lib/wire/views/my-work';

interface ClockBarProps {
  readonly clocks: readonly RunningClockView[];
  readonly minutesToday: number;
}

/** The one running clock: on what, since when, how long; and how much of today. */
export function ClockBar({ clocks, minutesToday }: ClockBarProps) {
  const now = useNow(clocks.length > 0);
  return (
    <section className={clocks.length === 0 ? 'clockbar' : 'clockbar on'} aria-label="Your clock">
      <Glyph name="clock" />
      {clocks.length === 0 ? (
        <p>Your clock does not run.</p>
      ) : (
        <ul>
          {clocks.map(({ name, chassis, since, sinceText, href }) => (
            <li key={href}>
              Running since <b className="num">{sinceText}</b>
              {now === null ? null : (
                <b className="num">
                  , {durationWords(Math.max(0, Math.floor((now - Date.parse(since)) / 60_000)))}
                </b>
              )}
              :{' '}
              <Link href={href} prefetch={false}>
                {name} of {chassis}
              </Link>
            </li>
          ))}
        </ul>
      )}
      <p className="today small">
        Today <b className="num">{durationWords(minutesToday)}</b>
      </p>
    </section>
  );
}
