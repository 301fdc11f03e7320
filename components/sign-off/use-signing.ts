'use client';

/** Giving one signature: what is asked, what came back, and never "failed" for what may have happened. */
import { useCallback, useRef, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import { newId } from '@/lib/offline/new-id';
import { sendCommand } from '@/lib/offline/send-command';
import type { SendOptions, SentAnswer } from '@/lib/offline/send-command';
import type { CarClaim } from '@/lib/domain/commands';
import { saidLine } from '@/lib/wire/views/said-line';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import type { Pending } from './model/sitting';

export type SigningState =
  | { readonly is: 'idle' }
  /** Sent, and no answer yet; `tries` counts those that came to nothing. */
  | { readonly is: 'asking'; readonly tries: number }
  | { readonly is: 'unknown'; readonly says: string; readonly again: (() => void) | null }
  | { readonly is: 'refused'; readonly lines: readonly RefusalLine[] }
  | { readonly is: 'said'; readonly says: string }
  | { readonly is: 'signed'; readonly what: string };

export interface Signing {
  readonly state: SigningState;
  /** Gives it; the promise answers as soon as there is something to say, the state goes on until all is known. */
  readonly give: (what: string, claim: CarClaim, options: GiveOptions) => Promise<SentAnswer>;
  readonly forget: () => void;
}

export interface GiveOptions {
  readonly signer?: SendOptions['signer'];
  /** One that was sent before and has had no answer. */
  readonly earlier?: Pending;
  readonly retryOf?: string;
  /** Kept before the first send. */
  readonly onSend?: (pending: Pending) => Promise<void>;
  /** The answer, once it is one; `pending` tells which. */
  readonly onAnswer: (answer: SentAnswer, pending: Pending) => Promise<void>;
}

export const useSigning = (car: string): Signing => {
  const [state, setState] = useState<SigningState>({ is: 'idle' });
  const busy = useRef(false);

  const give = useCallback(
    async (what: string, claim: CarClaim, options: GiveOptions): Promise<SentAnswer> => {
      if (busy.current) return { outcome: 'busy', says: 'This is being sent already.' };
      busy.current = true;
      const pending: Pending = options.earlier ?? {
        id: newId(),
        doneAt: new Date().toISOString(),
        claim,
        by: options.signer?.person ?? '',
      };
      await options.onSend?.(pending);
      setState({ is: 'asking', tries: 0 });
      return new Promise((answerNow) => {
        const settle = async (answer: SentAnswer): Promise<void> => {
          setState(stateOf(car, what, answer, () => void ask(answer)));
          busy.current = false;
          await options.onAnswer(answer, pending);
          answerNow(answer);
        };
        const ask = async (before: SentAnswer): Promise<void> => {
          if (before.outcome !== 'unknown' || busy.current) return;
          busy.current = true;
          setState({ is: 'asking', tries: 1 });
          await settle(await before.again());
        };
        void sendCommand(pending.claim, {
          id: pending.id,
          doneAt: pending.doneAt,
          ...(options.signer === undefined ? {} : { signer: options.signer }),
          ...(options.retryOf === undefined ? {} : { retryOf: options.retryOf }),
          onRetry: (tries) => {
            setState({ is: 'asking', tries });
            // The dialog over the sheet closes, and the sheet says what it waits for.
            if (tries === 1) announce('No answer yet. Asking again: it can’t count twice.');
            answerNow({ outcome: 'busy', says: 'No answer yet.' });
          },
        }).then(settle);
      });
    },
    [car],
  );

  return {
    state,
    give,
    forget: () => {
      setState({ is: 'idle' });
    },
  };
};

const stateOf = (car: string, what: string, answer: SentAnswer, again: () => void): SigningState => {
  switch (answer.outcome) {
    case 'accepted':
      announce(`${what}.`);
      return { is: 'signed', what };
    case 'refused':
      announce(`Not accepted: ${answer.refusals.map(({ sentence }) => sentence).join(' ')}`, 'assertive');
      return {
        is: 'refused',
        lines: answer.refusals.map(({ refusal, sentence }) => saidLine(car, refusal, sentence)),
      };
    case 'unknown':
      announce(answer.says, 'assertive');
      return { is: 'unknown', says: answer.says, again };
    case 'wrong-pin':
      return { is: 'idle' };
    case 'bad-input':
      return {
        is: 'said',
        says: answer.fields.map(({ field, says }) => `${field}: ${says}`).join(' '),
      };
    case 'conflict':
    case 'not-allowed':
    case 'not-signed-in':
    case 'busy':
      return { is: 'said', says: answer.says };
  }
};
