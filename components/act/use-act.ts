'use client';

import { useRef, useState } from 'react';
import { SIGNS } from '@/lib/domain/authority';
import { newId } from '@/lib/offline/new-id';
import { photoDrafts } from '@/lib/offline/photo-drafts';
import { sendCommand } from '@/lib/offline/send-command';
import type { SentAnswer } from '@/lib/offline/send-command';
import type { ActRef, Desk } from '@/lib/wire/views/desk';
import { useDesk } from './desk-context';
import { list, text } from './form';
import type { FormSpec, Values } from './form';
import { formFor } from './form-table';
import { photoAct } from './forms/photos';
import type { RunningClock } from './pause-first';
import type { PinPerson, Signer } from './pin-dialog';

export interface Override {
  readonly code: string;
  readonly reason: string;
}

export interface ActState {
  readonly spec: FormSpec | null;
  readonly values: Values;
  /** Rises when the act was accepted: what its fields hold themselves is forgotten then. */
  readonly round: number;
  readonly set: (name: string, value: string | readonly string[]) => void;
  /** The last answer that was not an acceptance; null before and after. */
  readonly answer: SentAnswer | null;
  /** What kept the form from being sent. */
  readonly missing: string | null;
  readonly busy: string | null;
  /** The PIN is being asked. */
  readonly asking: boolean;
  readonly signs: boolean;
  /** Why the one who is signed in may not; null = may. */
  readonly whyNotMe: string | null;
  readonly people: readonly PinPerson[];
  readonly submit: () => void;
  readonly asSomebody: () => void;
  readonly stopAsking: () => void;
  readonly give: (signer?: Signer, override?: Override) => Promise<SentAnswer>;
  /** Stops the clock that the actor has running, then gives the act again; where somebody else gave it, their PIN is asked. */
  readonly pauseFirst: (clock: RunningClock, leftAs: string) => Promise<void>;
  /** Asks once more about an act of which nobody knows whether it was recorded. */
  readonly askAgain: () => void;
  readonly leave: () => void;
}

/** One act's form: what was filled in, who gives it, and what the door answered. What was filled in is kept until it is accepted. */
export const useAct = (act: ActRef): ActState => {
  const { desk, done, readAgain } = useDesk();
  const [values, setValues] = useState<Values>({});
  const [answer, setAnswer] = useState<SentAnswer | null>(null);
  const [missing, setMissing] = useState<string | null>(null);
  const [round, setRound] = useState(0);
  const [asking, setAsking] = useState(false);
  const [busy, setBusy] = useState<string | null>(null);
  const refused = useRef<string | null>(null);
  const spec = formFor(act, desk, values);
  const whys = desk.whys[whyOf(act, desk, values)] ?? {};
  const signs = SIGNS.has(act.type);
  const whyNotMe = whys[desk.me.id] ?? null;

  const take = (sent: SentAnswer, said: string, id: string): void => {
    if (sent.outcome === 'accepted') {
      // Its photographs stand in the record now. Before the fields are made anew, which look for them.
      for (const { kind, name } of spec?.fields ?? [])
        if (kind === 'photo')
          void photoDrafts
            .given({ person: desk.me.id, car: desk.car, act: photoAct(act) }, list(values, name))
            .catch(() => undefined);
      setAnswer(null);
      setValues({});
      setRound((before) => before + 1);
      refused.current = null;
      done(said);
      return;
    }
    if (sent.outcome === 'wrong-pin') return;
    if (sent.outcome === 'refused') {
      refused.current = id;
      readAgain();
    }
    setAnswer(sent);
  };

  const give = async (signer?: Signer, override?: Override): Promise<SentAnswer> => {
    const id = newId();
    const said = spec?.says ?? '';
    setBusy('Sending');
    setAnswer(null);
    const claim = spec?.claim();
    if (claim === undefined) throw new Error(`${act.type} has no form.`);
    const sent = await sendCommand(claim, {
      id,
      ...(signer === undefined ? {} : { signer }),
      ...(override === undefined ? {} : { override }),
      ...(refused.current === null ? {} : { retryOf: refused.current }),
      onRetry: (tries) => setBusy(`No answer yet, asked ${String(tries + 1)} times`),
    });
    setBusy(null);
    take(sent, said, id);
    return sent;
  };

  const pauseFirst = async (clock: RunningClock, leftAs: string): Promise<void> => {
    setBusy(`Leaving ${clock.operation}`);
    const { car, operation, person } = clock;
    // Only one's own hands can be taken off it; for somebody else the work is paused.
    const type = person === desk.me.id ? 'leave-operation' : 'pause-operation';
    const claim = { type, car, operation, ...(leftAs === '' ? {} : { leftAs }) } as const;
    const sent = await sendCommand(claim, { id: newId() });
    setBusy(null);
    // It may be given twice without harm, so that what is not known of it is simply tried again.
    if (sent.outcome === 'unknown') setMissing(`No answer came about ${clock.operation}. Try it again.`);
    else if (sent.outcome !== 'accepted') setAnswer(sent);
    else if (person === desk.me.id) await give();
    else setAsking(true);
  };

  const ready = (): boolean => {
    const what = spec?.missing ?? null;
    setMissing(what);
    return what === null && busy === null;
  };

  return {
    spec,
    values,
    round,
    set: (name, value) => {
      setMissing(null);
      setValues((before) => ({ ...before, [name]: value }));
    },
    answer,
    missing,
    busy,
    asking,
    signs,
    whyNotMe,
    people: desk.people.map(({ id, name }) => {
      const whyNot = whys[id];
      return whyNot === undefined ? { id, name } : { id, name, whyNot };
    }),
    submit: () => {
      if (!ready()) return;
      if (signs || whyNotMe !== null) setAsking(true);
      else void give();
    },
    asSomebody: () => {
      if (ready()) setAsking(true);
    },
    stopAsking: () => setAsking(false),
    give,
    pauseFirst,
    askAgain: () => {
      if (answer?.outcome !== 'unknown') return;
      setBusy('Asking again');
      void answer.again().then((sent) => {
        setBusy(null);
        take(sent, spec?.says ?? '', '');
      });
    },
    leave: () => setAnswer(null),
  };
};

/** Each signature has its own answer to who may strike it. */
const whyOf = (act: ActRef, desk: Desk, values: Values): number =>
  act.type === 'strike-signature' ? (desk.signatures[text(values, 'signature')]?.why ?? act.why) : act.why;
