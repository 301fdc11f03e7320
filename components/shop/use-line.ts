'use client';

import { useSyncExternalStore } from 'react';
import { line } from '@/lib/offline/live-line';
import { AT_FIRST } from '@/lib/offline/live-state';
import type { LiveState } from '@/lib/offline/live-state';

/** What this page's line to the server says. */
export const useLine = (): LiveState => useSyncExternalStore(line.subscribe, line.current, () => AT_FIRST);

/** In what the page is behind; empty where it is not. */
export const useBehind = (): string => useSyncExternalStore(line.subscribe, line.behind, () => '');
