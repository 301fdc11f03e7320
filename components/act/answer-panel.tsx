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

interface AnswerPanelProps {
  readonly answer: SentAnswer;
  readonly car: string;
  /** What was tried. */
  readonly act: string;
  readonly onOverride: (override: Override) => void;
  /** Pauses the other work, then gives this again. */
  readonly onPauseFirst: (clock: RunningClock, leftAs: string) => void;
  readonly onAgain: () => void;
  readonly onLeave: () => void;
}

/** What the door said, at the form and never a toast: every reason with the place that clears it, or what is not known. */
export function AnswerPanel(props: AnswerPanelProps) {
  const { answer, act } = props;
  const heading = useId();
  const panel = useRef<HTMLElement>(null);
  const title = titleOf(answer, act);
  useEffect(() => {
    announce(title, 'assertive');
    panel.current?.focus();
  }, [answer, title]);
  return (
    <section ref={panel} className="refusal answer" aria-labelledby={heading} tabIndex={-1}>
      <header>
        <Glyph name={answer.outcome === 'unknown' ? 'offline' : 'gclosed'} size={32} />
        <h3 id={heading}>{title}</h3>
      </header>
      <Body {...props} />
    </section>
  );
}

const titleOf = (answer: SentAnswer, act: string): string => {
  switch (answer.outcome) {
    case 'refused':
      return `${act}: refused for ${numberOf(answer.refusals.length, 'reason')}`;
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

function Body({ answer, car, act, onOverride, onPauseFirst, onAgain, onLeave }: AnswerPanelProps) {
  switch (answer.outcome) {
    case 'refused': {
      const soft = answer.refusals.every(({ refusal }) => refusal.soft === true)
        ? answer.refusals[0]
        : undefined;
      const clock = onlyClock(answer.refusals);
      return (
        <>
          <RefusalLines
            lines={answer.refusals.map(({ refusal, sentence }) => saidLine(car, refusal, sentence))}
          />
          {clock === null ? null : (
            <PauseFirst clock={clock} act={act} onPause={(leftAs) => onPauseFirst(clock, leftAs)} />
          )}
          {soft === undefined ? null : <OverrideForm code={soft.refusal.code} onOverride={onOverride} />}
        </>
      );
    }
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
