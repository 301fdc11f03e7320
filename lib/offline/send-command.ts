/**
 * The one way from a screen to the command door. A browser may send a request twice by itself, and a lost answer does
 * not mean a lost act: the command has its id before it is first sent, every further try carries the same id and the
 * same words, and what has had no answer is never called failed.
 */
import type { Claim, Command } from '@/lib/domain/commands';
import type { DoorAnswer, DoorRequest } from '@/lib/wire/door';
import { nextSequence } from './device-sequence';
import { newId } from './new-id';
import { ownAct } from './own-acts';

export interface SendOptions {
  readonly signer?: { readonly person: string; readonly pin: string };
  /** Lets the lead past a soft refusal. */
  readonly override?: { readonly code: string; readonly reason: string };
  /** The refused command that this one tries again. */
  readonly retryOf?: string;
  /** Commands given together for several cars. */
  readonly batch?: string;
  /** When the hand did it; now, unless it is an earlier command asked about again. */
  readonly doneAt?: string;
  /** An id made before, where the caller keeps it; with it `doneAt` must be the same as then. */
  readonly id?: string;
  /** Told before each further try, so that the screen can say what it waits for. */
  readonly onRetry?: (tries: number) => void;
}

/** Nobody knows whether it was recorded. `again` asks once more, with the same id and the same words. */
export interface UnknownAnswer {
  readonly outcome: 'unknown';
  readonly says: string;
  readonly again: () => Promise<SentAnswer>;
}

export type SentAnswer = DoorAnswer | UnknownAnswer;

/** One try may take this long before its answer counts as lost. */
const PATIENCE_MS = 8000;
/** Waits between the tries; together with the tries themselves about half a minute. */
const WAITS_MS = [1000, 2000, 4000, 5000, 5000, 5000, 5000];

const OUTCOMES: Readonly<Record<DoorAnswer['outcome'], true>> = {
  accepted: true,
  refused: true,
  conflict: true,
  'bad-input': true,
  'wrong-pin': true,
  'not-allowed': true,
  'not-signed-in': true,
  busy: true,
};

/** Sends one claim, and again with the same id until there is an answer or half a minute has passed. Never rejects. */
export const sendCommand = (claim: Claim, options: SendOptions = {}): Promise<SentAnswer> => {
  const sequence = nextSequence();
  const command: Command = {
    id: options.id ?? newId(),
    doneAt: options.doneAt ?? new Date().toISOString(),
    claim,
    ...(options.override === undefined ? {} : { override: options.override }),
    ...(options.retryOf === undefined ? {} : { retryOf: options.retryOf }),
    ...(options.batch === undefined ? {} : { batch: options.batch }),
  };
  const request: DoorRequest = {
    command,
    ...(sequence === undefined ? {} : { sequence }),
    ...(options.signer === undefined ? {} : { signer: options.signer }),
  };
  const answered = ownAct('car' in claim ? `car:${claim.car}` : 'shop');
  return untilAnswered(JSON.stringify(request), options.onRetry).finally(answered);
};

const untilAnswered = async (body: string, onRetry: SendOptions['onRetry']): Promise<SentAnswer> => {
  let wasLost = false;
  for (const [tries, wait] of [0, ...WAITS_MS].entries()) {
    if (tries > 0) {
      onRetry?.(tries);
      await pause(wait);
    }
    const answer = await tryOnce(body);
    if (answer === null || answer.outcome === 'busy') {
      wasLost = true;
      continue;
    }
    return wasLost && isGivenUnread(answer) ? unknown(body, onRetry, answer.says) : answer;
  }
  return unknown(body, onRetry, 'No answer came.');
};

/** An answer given at the door, before anybody looked whether the id is known: it says nothing about an earlier try. */
const isGivenUnread = (
  answer: DoorAnswer,
): answer is Extract<DoorAnswer, { outcome: 'wrong-pin' | 'not-allowed' | 'not-signed-in' }> =>
  answer.outcome === 'wrong-pin' || answer.outcome === 'not-allowed' || answer.outcome === 'not-signed-in';

const unknown = (body: string, onRetry: SendOptions['onRetry'], because: string): UnknownAnswer => ({
  outcome: 'unknown',
  says: `${because} It may be recorded or not. Ask again: it can’t count twice.`,
  again: () => untilAnswered(body, onRetry),
});

/** One request; null where no readable answer came back. */
const tryOnce = async (body: string): Promise<DoorAnswer | null> => {
  try {
    const response = await fetch('/api/commands', {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      credentials: 'same-origin',
      cache: 'no-store',
      redirect: 'error',
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    const answer: unknown = await response.json();
    return isAnswer(answer) ? answer : null;
  } catch {
    return null;
  }
};

const isAnswer = (given: unknown): given is DoorAnswer =>
  typeof given === 'object' &&
  given !== null &&
  'outcome' in given &&
  typeof given.outcome === 'string' &&
  Object.hasOwn(OUTCOMES, given.outcome);

const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
