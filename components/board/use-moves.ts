'use client';

import { useRouter } from 'next/navigation';
import { startTransition, useCallback, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import type { CarClaim } from '@/lib/domain/commands';
import { newId } from '@/lib/offline/new-id';
import { sendCommand } from '@/lib/offline/send-command';
import type { SentAnswer } from '@/lib/offline/send-command';
import { saidLine } from '@/lib/wire/views/said-line';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import { gateNumber, things } from './gate-words';
import type { CarOnTrack } from './track-drag';

/** What hangs from a gate post. */
export interface Hanging {
  readonly car: string;
  /** The stage it was hung in: once the car stands elsewhere it is gone. */
  readonly stage: number;
  readonly title: string;
  readonly says: string;
  readonly lines: readonly RefusalLine[];
  /** What held the gate on the board when it was hung. */
  readonly gate: readonly RefusalLine[];
  /** Somebody has just been refused, rather than looked what is left to do. */
  readonly isRefusal: boolean;
  /** Asks for an answer that never came. */
  readonly again: (() => void) | null;
  /** Where the focus was, to which it goes back. */
  readonly opener: Element | null;
}

/** What the lead is asked. */
export type Question =
  | { readonly kind: 'move'; readonly car: string }
  | { readonly kind: 'back'; readonly car: string; readonly to: number }
  | {
      readonly kind: 'room';
      readonly car: string;
      readonly to: number;
      readonly says: readonly string[];
      readonly code: string;
      readonly retryOf: string;
    };

/** A move that was asked for and is not seen on the board yet. */
export interface Pending {
  readonly car: string;
  readonly to: number;
  /** As long as the board shows this version, the move is not on it. */
  readonly version: number;
  /** The gate was closed when it was asked: the plate waits at the post. */
  readonly atPost: boolean;
}

type MoveClaim = Extract<CarClaim, { readonly type: 'advance-car' | 'send-back' }>;

/** Everything that can come of moving a plate. */
export const useMoves = (find: (id: string) => CarOnTrack | undefined) => {
  const router = useRouter();
  const [hanging, setHanging] = useState<Hanging | null>(null);
  const [question, setQuestion] = useState<Question | null>(null);
  const [pending, setPending] = useState<Pending | null>(null);

  const hang = useCallback(
    (on: CarOnTrack, rest: Omit<Hanging, 'car' | 'stage' | 'gate' | 'opener'>): void => {
      const { id: car, stage, gate } = on.car;
      setHanging({ car, stage, gate, opener: document.activeElement, ...rest });
      announce(`${rest.title}. ${rest.says}`, rest.isRefusal ? 'assertive' : 'polite');
    },
    [],
  );

  const send = async (
    on: CarOnTrack,
    claim: MoveClaim,
    to: number,
    past?: { readonly code: string; readonly reason: string; readonly retryOf: string },
  ): Promise<void> => {
    const { car, stages } = on;
    const id = newId();
    setQuestion(null);
    setHanging(null);
    setPending({ car: car.id, to, version: car.version, atPost: to > car.stage && car.gate.length > 0 });

    const take = (answer: SentAnswer): void => {
      setHanging(null);
      if (answer.outcome === 'accepted') {
        announce(`${car.chassis} stands in ${stages[to]?.name ?? 'its new stage'}.`);
        startTransition(() => router.refresh());
        return;
      }
      setPending(null);
      if (answer.outcome === 'not-signed-in') {
        window.location.assign('/sign-in');
        return;
      }
      if (answer.outcome !== 'refused') {
        hang(on, { ...troubleWords(on, answer), lines: [], isRefusal: true, again: againOf(answer, take) });
        return;
      }
      const { refusals } = answer;
      const soft = refusals.find(({ refusal }) => refusal.soft === true);
      if (soft !== undefined && refusals.every(({ refusal }) => refusal.soft === true))
        setQuestion({
          kind: 'room',
          car: car.id,
          to,
          says: refusals.map(({ sentence }) => sentence),
          code: soft.refusal.code,
          retryOf: id,
        });
      else {
        const lines = refusals.map(({ refusal, sentence }) =>
          withUnder(saidLine(car.id, refusal, sentence), car.gate),
        );
        hang(on, { ...refusedWords(on, lines.length), lines, isRefusal: true, again: null });
      }
      // What was refused may have been another's doing a moment ago: the board is asked for again.
      startTransition(() => router.refresh());
    };

    const override =
      past === undefined ? {} : { override: { code: past.code, reason: past.reason }, retryOf: past.retryOf };
    const onRetry = (): void =>
      hang(on, {
        title: `No answer yet about ${car.chassis}`,
        says: 'It is asked again under the same number, so that it can’t count twice.',
        lines: [],
        isRefusal: false,
        again: null,
      });
    take(await sendCommand(claim, { id, onRetry, ...override }));
  };

  const advance = (
    on: CarOnTrack,
    to: number,
    past?: { code: string; reason: string; retryOf: string },
  ): void => {
    const stage = on.stages[to];
    if (stage !== undefined) void send(on, { type: 'advance-car', car: on.car.id, to: stage.key }, to, past);
  };

  return {
    hanging,
    question,
    pending,
    ask: setQuestion,
    letGo: () => setHanging(null),

    /** The plate was put down there, by whatever means. */
    putDown(id: string, to: number): void {
      const on = find(id);
      if (on === undefined || to === on.car.stage) return;
      if (to < on.car.stage) setQuestion({ kind: 'back', car: id, to });
      else advance(on, to);
    },

    advance,

    sendBack(on: CarOnTrack, to: number, reason: string): void {
      const stage = on.stages[to];
      if (stage !== undefined)
        void send(on, { type: 'send-back', car: on.car.id, to: stage.key, reason }, to);
    },

    /** Why this person does not move it. */
    tell(on: CarOnTrack, says: string): void {
      hang(on, { title: staysIn(on), says, lines: [], isRefusal: false, again: null });
    },

    /** What keeps the gate closed, without trying it. */
    look(on: CarOnTrack): void {
      const { car } = on;
      hang(on, {
        title: `Gate ${gateNumber(car)} of ${car.chassis}`,
        says: `${things(car.gate.length)} to clear before it opens.`,
        lines: car.gate,
        isRefusal: false,
        again: null,
      });
    },
  };
};

/** The answer says only the whole; what stands under a line is on the board already. */
const withUnder = (line: RefusalLine, known: readonly RefusalLine[]): RefusalLine => {
  const same = known.find(({ code, href }) => code === line.code && href === line.href);
  return same?.under === undefined ? line : { ...line, under: same.under };
};

const staysIn = ({ car, stages }: CarOnTrack): string =>
  `${car.chassis} stays in ${stages[car.stage]?.name ?? 'its stage'}`;

const refusedWords = (on: CarOnTrack, count: number): Pick<Hanging, 'title' | 'says'> => {
  const next = on.stages[on.car.stage + 1];
  const room = next === undefined || next.room === '' ? '' : ` ${next.name}: ${next.room}.`;
  return { title: staysIn(on), says: `${things(count)} to clear before gate ${gateNumber(on.car)}.${room}` };
};

type Trouble = Exclude<SentAnswer, { readonly outcome: 'accepted' | 'refused' }>;

const troubleWords = (on: CarOnTrack, answer: Trouble): Pick<Hanging, 'title' | 'says'> => {
  if (answer.outcome === 'unknown')
    return { title: `Nobody knows yet whether ${on.car.chassis} moved`, says: answer.says };
  const says =
    answer.outcome === 'bad-input' ? answer.fields.map((field) => field.says).join(' ') : answer.says;
  return { title: staysIn(on), says };
};

const againOf = (answer: Trouble, take: (answer: SentAnswer) => void): (() => void) | null =>
  answer.outcome === 'unknown' ? () => void answer.again().then(take) : null;
