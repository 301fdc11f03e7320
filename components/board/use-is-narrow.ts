'use client';

import { useSyncExternalStore } from 'react';

const QUERY = '(max-width: 620px)';

const watch = (changed: () => void): (() => void) => {
  const list = window.matchMedia(QUERY);
  list.addEventListener('change', changed);
  return () => list.removeEventListener('change', changed);
};

/** On a phone a car is a plate above its way, and there is no track to drag it along. */
export const useIsNarrow = (): boolean =>
  useSyncExternalStore(
    watch,
    () => window.matchMedia(QUERY).matches,
    () => false,
  );
