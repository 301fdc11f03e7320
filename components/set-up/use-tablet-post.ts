'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { announce } from '@/components/ui/live-region';
import type { TabletAnswer, TabletRequest } from '@/lib/wire/set-up';
import { ask } from './ask';

export interface TabletPost {
  readonly isBusy: boolean;
  readonly answer: TabletAnswer | null;
  readonly wrong: string | null;
  readonly send: (request: TabletRequest, says: string, done?: () => void) => Promise<void>;
}

/** Asks for something about tablets and keeps what was answered. */
export const useTabletPost = (): TabletPost => {
  const router = useRouter();
  const [isBusy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<TabletAnswer | null>(null);
  return {
    isBusy,
    answer,
    wrong: answer !== null && 'says' in answer ? answer.says : null,
    send: async (request, says, done) => {
      setBusy(true);
      const got = await ask<TabletAnswer>('/api/set-up/tablets', request);
      setBusy(false);
      setAnswer(got);
      if (got.outcome !== 'done' && got.outcome !== 'made') return;
      announce(says);
      done?.();
      router.refresh();
    },
  };
};
