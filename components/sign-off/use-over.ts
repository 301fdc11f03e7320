'use client';

/** Readings over the window are warnings of their own: sent at once, and again until the server has them. */
import { useEffect, useRef, useState } from 'react';
import { sendCommand } from '@/lib/offline/send-command';
import type { SentAnswer } from '@/lib/offline/send-command';
import type { OverReading, Sitting } from './model/sitting';
import type { SittingNow } from './use-drafts';

/** Between two tries, once the first half minute brought no answer. */
const AGAIN_MS = 15_000;

const marked =
  (id: string) =>
  (sitting: Sitting): Sitting => ({
    ...sitting,
    over: sitting.over.map((each) => (each.id === id ? { ...each, sent: true } : each)),
  });

interface Owed {
  readonly over: OverReading;
  readonly mark: () => Promise<void>;
}

/** The first that the server does not have: of this sitting, or of any other draft on this device. */
const nextOwed = ({ sitting, others, change, changeOther }: SittingNow): Owed | null => {
  const own = sitting.over.find(({ sent }) => !sent);
  if (own !== undefined) return { over: own, mark: () => change(marked(own.id)) };
  for (const draft of others) {
    const over = draft.body.over.find(({ sent }) => !sent);
    if (over !== undefined) return { over, mark: () => changeOther(draft, marked(over.id)) };
  }
  return null;
};

/** Answers what came back for one that was not taken; null while all is well or on its way. */
export const useOver = (now: SittingNow, onTaken: () => void): SentAnswer | null => {
  const [answer, setAnswer] = useState<SentAnswer | null>(null);
  const [turn, setTurn] = useState(0);
  const busy = useRef(false);
  const owed = nextOwed(now);
  const latest = useRef({ owed, onTaken });
  latest.current = { owed, onTaken };
  const id = owed?.over.id;

  useEffect(() => {
    const { owed: one } = latest.current;
    if (one === null || busy.current) return;
    busy.current = true;
    const { claim, id: name, doneAt } = one.over;
    void sendCommand(claim, { id: name, doneAt }).then(async (said) => {
      busy.current = false;
      if (said.outcome === 'accepted') {
        setAnswer(null);
        await one.mark();
        latest.current.onTaken();
      } else {
        setAnswer(said);
        setTimeout(() => {
          setTurn((before) => before + 1);
        }, AGAIN_MS);
      }
    });
  }, [id, turn]);

  useEffect(() => {
    const again = (): void => {
      setTurn((before) => before + 1);
    };
    window.addEventListener('online', again);
    return () => {
      window.removeEventListener('online', again);
    };
  }, []);

  return answer;
};
