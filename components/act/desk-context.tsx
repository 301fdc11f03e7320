'use client';

import { useRouter } from 'next/navigation';
import { createContext, use, useState, useTransition } from 'react';
import type { ReactNode } from 'react';
import { announce } from '@/components/ui/live-region';
import type { Desk } from '@/lib/wire/views/desk';

export interface Told {
  readonly text: string;
  readonly at: number;
}

interface DeskState {
  readonly desk: Desk;
  /** Something was recorded: it is said, and the page is read again (D6). */
  readonly done: (text: string) => void;
  /** Reads the page again: what refused an act may be newer than what stands here. */
  readonly readAgain: () => void;
  readonly told: Told | null;
  /** The page is being read again. */
  readonly reading: boolean;
}

const Context = createContext<DeskState | null>(null);

/** What the forms below are made from, and what becomes of an act that was accepted. */
export function DeskProvider({ desk, children }: { readonly desk: Desk; readonly children: ReactNode }) {
  const router = useRouter();
  const [told, setTold] = useState<Told | null>(null);
  const [reading, startReading] = useTransition();
  const done = (text: string): void => {
    setTold({ text, at: Date.now() });
    announce(`Recorded. ${text}`);
    startReading(() => {
      router.refresh();
    });
  };
  const readAgain = (): void => router.refresh();
  return <Context value={{ desk, done, readAgain, told, reading }}>{children}</Context>;
}

export const useDesk = (): DeskState => {
  const state = use(Context);
  if (state === null) throw new Error('A form of an act stands outside DeskProvider.');
  return state;
};
