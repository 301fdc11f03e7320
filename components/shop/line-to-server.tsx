'use client';

import { useSyncExternalStore } from 'react';
import { Glyph } from '@/components/ui/glyph';

let offlineSince: string | null = null;

const watch = (changed: () => void): (() => void) => {
  const note = (): void => {
    offlineSince = navigator.onLine
      ? null
      : (offlineSince ?? new Date().toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' }));
    changed();
  };
  window.addEventListener('online', note);
  window.addEventListener('offline', note);
  return () => {
    window.removeEventListener('online', note);
    window.removeEventListener('offline', note);
  };
};

/** The wire at the top: whether what one does here reaches the others. */
export function LineToServer() {
  const since = useSyncExternalStore(
    watch,
    () => offlineSince,
    () => null,
  );
  return (
    <span className="line" role="status">
      <Glyph name={since === null ? 'online' : 'offline'} size={18} />
      {since === null ? 'In step' : `Offline since ${since}`}
    </span>
  );
}
