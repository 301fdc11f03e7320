'use client';

import { useEffect, useRef, useState } from 'react';
import { askLock } from './ask-lock';

const KEY = 'slipmark.active';
/** Enough to notice and to touch it (WCAG 2.2.1 asks for twenty). */
const WARN_MS = 30_000;
/** The server hears of a hand once a minute at most; it gives more grace than that. */
const TELL_MS = 60_000;
const NOTE_MS = 1000;
const INPUTS = ['pointerdown', 'keydown', 'wheel', 'touchstart'] as const;

export type Idle = 'busy' | 'warned' | 'idle';

/** All windows of one browser share one session: a hand in one keeps all of them open. */
const lastHand = (own: number): number => {
  try {
    const shared = Number(localStorage.getItem(KEY) ?? '0');
    return shared > own && shared <= Date.now() ? shared : own;
  } catch {
    return own;
  }
};

const share = (at: number): void => {
  try {
    localStorage.setItem(KEY, String(at));
  } catch {
    // A browser that keeps nothing has this one window to go by.
  }
};

/** Counts the time without a hand on the screen, while nothing covers it. */
export const useIdle = (minutes: number, isCovered: boolean): Idle => {
  const [idle, setIdle] = useState<Idle>('busy');
  const told = useRef(0);
  useEffect(() => {
    if (isCovered) {
      setIdle('busy');
      return;
    }
    let own = Date.now();
    let timer: ReturnType<typeof setTimeout> | undefined;
    share(own);
    told.current = own;
    void askLock({ act: 'here' });
    const look = (): void => {
      clearTimeout(timer);
      const left = lastHand(own) + minutes * 60_000 - Date.now();
      setIdle(left <= 0 ? 'idle' : left <= WARN_MS ? 'warned' : 'busy');
      if (left > 0) timer = setTimeout(look, left > WARN_MS ? left - WARN_MS : left);
    };
    const hand = (): void => {
      const now = Date.now();
      // A tablet that slept too long is not woken by the finger that finds it.
      if (now - lastHand(own) >= minutes * 60_000) {
        look();
        return;
      }
      if (now - own < NOTE_MS) return;
      own = now;
      share(now);
      if (now - told.current >= TELL_MS) {
        told.current = now;
        void askLock({ act: 'here' });
      }
      look();
    };
    const seen = (): void => {
      if (document.visibilityState === 'visible') look();
    };
    for (const input of INPUTS) document.addEventListener(input, hand, { capture: true, passive: true });
    document.addEventListener('visibilitychange', seen);
    look();
    return () => {
      clearTimeout(timer);
      for (const input of INPUTS) document.removeEventListener(input, hand, { capture: true });
      document.removeEventListener('visibilitychange', seen);
    };
  }, [minutes, isCovered]);
  return idle;
};
