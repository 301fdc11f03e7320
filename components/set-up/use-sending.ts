'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { announce } from '@/components/ui/live-region';
import type { Claim } from '@/lib/domain/commands';
import { sendCommand } from '@/lib/offline/send-command';
import type { SentAnswer } from '@/lib/offline/send-command';

export interface Sending {
  readonly isBusy: boolean;
  /** What came of the last one; null before the first, and after `clear`. */
  readonly answer: SentAnswer | null;
  /** What is wrong with one field of the claim, by the door's own words. */
  readonly faultOf: (field: string) => string | null;
  /** Gives the command; `done` runs when it was accepted, with what was said aloud. */
  readonly send: (claim: Claim, says: string, done?: () => void) => Promise<void>;
  /** The same, signed: the PIN dialog wants to know what came of it. */
  readonly sign: (
    claim: Claim,
    signer: { readonly person: string; readonly pin: string },
    says: string,
    done?: () => void,
  ) => Promise<SentAnswer>;
  readonly again: () => Promise<void>;
  readonly clear: () => void;
}

/** Gives commands from a form and keeps what was answered, in the door's own words. */
export const useSending = (): Sending => {
  const router = useRouter();
  const [isBusy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<SentAnswer | null>(null);
  const [last, setLast] = useState<{ readonly says: string; readonly done?: () => void } | null>(null);

  const take = async (asked: Promise<SentAnswer>, says: string, done?: () => void): Promise<SentAnswer> => {
    setBusy(true);
    const got = await asked;
    setBusy(false);
    setAnswer(got);
    if (got.outcome === 'accepted') {
      announce(says);
      done?.();
      router.refresh();
    }
    return got;
  };

  return {
    isBusy,
    answer,
    faultOf: (field) =>
      answer?.outcome === 'bad-input'
        ? (answer.fields.find((each) => each.field === `command.claim.${field}`)?.says ?? null)
        : null,
    send: async (claim, says, done) => {
      setLast({ says, done });
      await take(sendCommand(claim), says, done);
    },
    sign: (claim, signer, says, done) => {
      setLast({ says, done });
      return take(sendCommand(claim, { signer }), says, done);
    },
    again: async () => {
      if (answer?.outcome === 'unknown') await take(answer.again(), last?.says ?? '', last?.done);
    },
    clear: () => setAnswer(null),
  };
};
