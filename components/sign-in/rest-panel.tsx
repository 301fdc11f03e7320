'use client';

import { useEffect, useState } from 'react';
import { Glyph } from '@/components/ui/glyph';

interface RestPanelProps {
  /** `Tobit Fenn’s PIN`, `This name`. */
  readonly what: string;
  readonly until: string;
  readonly seconds: number;
  /** The page to try at again. */
  readonly again: string;
  readonly at: 'desk' | 'bench';
}

/** Too many wrong ones: how long it rests, whom that concerns and whom not, and who can lift it. */
export function RestPanel({ what, until, seconds, again, at }: RestPanelProps) {
  const left = useSecondsLeft(seconds);
  return (
    <section className="refusal rest" role="alert">
      <header>
        <Glyph name="lock" size={32} />
        <h2>
          {what} rests until {until}
        </h2>
      </header>
      {left > 0 ? (
        <p className="big num" role="timer" aria-live="off">
          {minutesAndSeconds(left)}
        </p>
      ) : (
        <p className="over">
          <a className="btn main" href={again}>
            Try again
          </a>
        </p>
      )}
      <p className="lk">
        Five wrong ones in a row. The clock is the server’s; each further wrong one doubles it, up to a
        quarter of an hour.
      </p>
      <ul>
        <li>
          <Glyph name="tablet" />
          <div>
            <b>Everyone else can go on here.</b>
            <span className="fix small">
              {at === 'bench' ? 'Choose another name.' : 'It rests for this name only, and on this device.'}
            </span>
          </div>
        </li>
        <li>
          <Glyph name="passed" />
          <div>
            <b>A lead or an owner can lift it at the desk.</b>
            <span className="fix small">Under Set up, People.</span>
          </div>
        </li>
      </ul>
    </section>
  );
}

const useSecondsLeft = (seconds: number): number => {
  const [left, setLeft] = useState(seconds);
  useEffect(() => {
    const end = performance.now() + seconds * 1000;
    const timer = setInterval(() => {
      const now = Math.max(0, Math.ceil((end - performance.now()) / 1000));
      setLeft(now);
      if (now === 0) clearInterval(timer);
    }, 250);
    return () => clearInterval(timer);
  }, [seconds]);
  return left;
};

const minutesAndSeconds = (seconds: number): string =>
  `${String(Math.floor(seconds / 60))}:${String(seconds % 60).padStart(2, '0')}`;
