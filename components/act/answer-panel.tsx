'use client';

import Link from 'next/link';
import { useEffect, useId, useRef, useState } from 'react';
import { RefusalLines } from '@/components/shop/refusal-list';
import { Button } from '@/components/ui/button';
import { TextField } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import { numberOf } from './count-words';
import { PauseFirst, onlyClock } from './pause-first';
import type { RunningClock } from './pause-first';
import type { SentAnswer } from '@/lib/offline/send-command';
import { saidLine } from '@/lib/wire/views/said-line';
import type { Override } from './use-act';
import type { Followed } from './use-followed';

interface AnswerPanelProps {
  readonly answer: SentAnswer;
  /** What stands of a refusal by now; null where it was none. */
  readonly followed: Followed | null;
  readonly car: string;
  /** What was tried. */
  readonly act: string;
  readonly onOverride: (override: Override) => void;
  /** Pauses the other work, then gives this again. */
  readonly onPauseFirst: (clock: RunningClock, leftAs: string) => void;
  readonly onAgain: () => void;
  /** Gives the act anew, now that nothing stands against it. */
  readonly onGive: () => void;
  readonly onLeave: () => void;
}

/** What the door said, at the form and never a toast: every reason with the place that clears it, or what is not known. */
export function AnswerPanel(props: AnswerPanelProps) {
  const { answer, followed, act } = props;
  const heading = useId();
  const panel = useRef<HTMLElement>(null);
  const title = titleOf(answer, followed, act);
  const said = useRef<SentAnswer | null>(null);
  useEffect(() => {
    // What is cleared meanwhile is told, and takes the focus from nobody.
    const isNew = said.current !== answer;
    said.current = answer;
    announce(title, isNew ? 'assertive' : 'polite');
    if (isNew) panel.current?.focus();
  }, [answer, title]);
  const isFree = followed !== null && followed.standing.length === 0;
  return (
    <section
      ref={panel}
      className={isFree ? 'refusal answer free' : 'refusal answer'}
      aria-labelledby={heading}
      tabIndex={-1}
    >
      <header>
        <Glyph name={answer.outcome === 'unknown' ? 'offline' : isFree ? 'gopen' : 'gclosed'} size={32} />
        <h3 id={heading}>{title}</h3>
      </header>
      <Body {...props} />
    </section>
  );
}

const titleOf = (answer: SentAnswer, followed: Followed | null, act: string): string => {
  switch (answer.outcome) {
    case 'refused':
      return refusedTitle(followed ?? { standing: answer.refusals, cleared: [] }, act);
    case 'unknown':
      return `${act}: no answer came`;
    case 'bad-input':
      return `${act}: something can’t be read`;
    case 'not-signed-in':
      return 'Nobody is signed in here any more';
    case 'not-allowed':
      return `${act}: not allowed`;
    default:
      return `${act}: not recorded`;
  }
};

const refusedTitle = ({ standing, cleared }: Followed, act: string): string => {
  if (standing.length === 0) return `${act}: all that stood in the way is cleared`;
  const count = numberOf(standing.length, 'reason');
  return cleared.length === 0
    ? `${act}: refused for ${count}`
    : `${act}: ${count} left, ${String(cleared.length)} cleared`;
};

function Body(props: AnswerPanelProps) {
  const { answer, followed, onAgain, onLeave } = props;
  switch (answer.outcome) {
    case 'refused':
      return <Reasons {...props} {...(followed ?? { standing: answer.refusals, cleared: [] })} />;
    case 'unknown':
      return (
        <div className="in">
          <p>{answer.says}</p>
          <p className="acts">
            <Button kind="main" onClick={onAgain}>
              Ask again
            </Button>
            <Button kind="quiet" onClick={onLeave}>
              Leave it, and look at the log
            </Button>
          </p>
        </div>
      );
    case 'bad-input':
      return (
        <ul>
          {answer.fields.map(({ field, says }) => (
            <li key={`${field} ${says}`}>
              <Glyph name="gap" />
              <div>
                <b>{says}</b>
              </div>
            </li>
          ))}
        </ul>
      );
    case 'not-signed-in':
      return (
        <div className="in">
          <p>Nothing was recorded. What you filled in stays here.</p>
          <p className="acts">
            <Link className="btn" href="/sign-in" target="_blank">
              Sign in, in another window
            </Link>
          </p>
        </div>
      );
    case 'accepted':
      return null;
    default:
      return (
        <div className="in">
          <p>{answer.says}</p>
        </div>
      );
  }
}

/** What still stands, each with the place that clears it; then what is cleared since, and the act once more. */
function Reasons({
  standing,
  cleared,
  car,
  act,
  onOverride,
  onPauseFirst,
  onGive,
}: AnswerPanelProps & Followed) {
  const soft = standing.every(({ refusal }) => refusal.soft === true) ? standing[0] : undefined;
  const clock = onlyClock(standing);
  return (
    <>
      <RefusalLines lines={standing.map(({ refusal, sentence }) => saidLine(car, refusal, sentence))} />
      {cleared.length === 0 ? null : (
        <ul className="cleared" aria-label="Cleared since">
          {cleared.map(({ refusal, sentence }) => (
            <li key={sentence}>
              <Glyph name="passed" />
              <div>
                <span className="small dim">Cleared since</span>
                <s>{saidLine(car, refusal, sentence).says}</s>
              </div>
            </li>
          ))}
        </ul>
      )}
      {standing.length > 0 ? null : (
        <div className="in">
          <p>It was refused then. Nothing that stood in the way does now.</p>
          <p className="acts">
            <Button kind="main" onClick={onGive}>
              {act} now
            </Button>
          </p>
        </div>
      )}
      {clock === null ? null : (
        <PauseFirst clock={clock} act={act} onPause={(leftAs) => onPauseFirst(clock, leftAs)} />
      )}
      {soft === undefined ? null : <OverrideForm code={soft.refusal.code} onOverride={onOverride} />}
    </>
  );
}

/** The one soft refusal: a full bay. The lead says why the car goes there all the same. */
function OverrideForm({
  code,
  onOverride,
}: {
  readonly code: string;
  readonly onOverride: (override: Override) => void;
}) {
  const [reason, setReason] = useState('');
  return (
    <div className="in override">
      <TextField
        label="Reason for going past it, kept for good"
        value={reason}
        rows={1}
        onChange={(event) => setReason(event.target.value)}
      />
      <Button held={reason.trim() === ''} onClick={() => onOverride({ code, reason: reason.trim() })}>
        Go all the same
      </Button>
    </div>
  );
}
