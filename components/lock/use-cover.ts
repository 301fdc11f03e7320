'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import { cover } from '@/lib/offline/cover';
import type { SignInPerson } from '@/lib/wire/views/sign-in';
import { askLock } from './ask-lock';
import { useIdle } from './use-idle';

interface Covering {
  readonly minutes: number;
  readonly startsLocked: boolean;
  /** Where to go on once it opens; null: the page beneath is there. */
  readonly to: string | null;
}

export interface Cover {
  readonly isLocked: boolean;
  readonly isWarned: boolean;
  /** Everybody who could come; empty until the server has said so. */
  readonly people: readonly SignInPerson[];
  readonly since: string;
  /** It is open again, for the same person; told to the other windows too. */
  readonly open: () => void;
}

/** When the cover comes and goes, the same in all windows of this browser. */
export const useCover = ({ minutes, startsLocked, to }: Covering): Cover => {
  const router = useRouter();
  const [isLocked, setLocked] = useState(startsLocked);
  const [people, setPeople] = useState<readonly SignInPerson[]>([]);
  const [since, setSince] = useState('');
  const others = useRef<BroadcastChannel | null>(null);
  const idle = useIdle(minutes, isLocked);

  const goOn = useCallback((): void => {
    setLocked(false);
    if (to !== null) location.replace(to);
    // What the others did meanwhile; what was typed here stays.
    else router.refresh();
  }, [router, to]);

  useEffect(() => {
    const channel = new BroadcastChannel('slipmark-lock');
    others.current = channel;
    channel.onmessage = ({ data }: MessageEvent<unknown>) => {
      if (data === 'locked') setLocked(true);
      if (data === 'open') goOn();
      if (data === 'taken-over') location.assign('/board');
    };
    return () => channel.close();
  }, [goOn]);

  useEffect(() => {
    if (idle !== 'idle') return;
    setLocked(true);
    others.current?.postMessage('locked');
  }, [idle]);

  useEffect(() => {
    // Pages that read themselves again look here first, or a locked session would send them away from what is typed.
    cover.set(isLocked);
    document.documentElement.toggleAttribute('data-locked', isLocked);
    if (!isLocked) return;
    setSince(new Date().toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' }));
    void askLock({ act: 'lock' }).then((answer) => {
      if (answer?.outcome === 'locked') setPeople(answer.people);
    });
  }, [isLocked]);

  return {
    isLocked,
    isWarned: idle === 'warned' && !isLocked,
    people,
    since,
    open: () => {
      others.current?.postMessage('open');
      goOn();
    },
  };
};
