'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useSyncExternalStore, useTransition } from 'react';
import { cover } from '@/lib/offline/cover';
import { line } from '@/lib/offline/live-line';
import { isOwnAct } from '@/lib/offline/own-acts';
import { useBehind, useLine } from './use-line';

/** Whoever has just acted on this page refreshes by itself; only what that did not bring is asked for. */
const OWN_MS = 800;
/** A page that is still behind after it was made anew: something is slow, and asking harder makes it slower. */
const AGAIN_MS = 2000;

/**
 * Asks for the page again when what it shows is behind what was heard, once at a time, however much is heard. What
 * somebody is typing, what is open and where the focus is all stay: only what the server says is exchanged.
 */
export function KeepInStep() {
  const router = useRouter();
  const { touch, clock } = useLine();
  const isBehind = useBehind();
  const isCovered = useSyncExternalStore(cover.subscribe, cover.current, () => false);
  const [isAsking, ask] = useTransition();
  const asked = useRef({ for: '', clock: 0 });

  useEffect(() => {
    if (isBehind === '' || isAsking || isCovered || touch !== 'in-step') return;
    const isOwn = isBehind.split(' ').every((each) => isOwnAct(each.split('@')[0] ?? ''));
    const wait = asked.current.for === isBehind ? AGAIN_MS : isOwn ? OWN_MS : 0;
    const timer = setTimeout(() => {
      asked.current = { for: isBehind, clock };
      ask(() => router.refresh());
    }, wait);
    return () => clearTimeout(timer);
  }, [isBehind, isAsking, isCovered, touch, clock, router]);

  useEffect(() => {
    // The server took a locked session for none and let the line go.
    if (!isCovered) line.again();
  }, [isCovered]);

  useEffect(() => {
    if (!isAsking && asked.current.clock > 0) line.caughtUp(asked.current.clock);
  }, [isAsking]);

  return null;
}
