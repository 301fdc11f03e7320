'use client';

import { createContext, use, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { announce } from '@/components/ui/live-region';

interface Places {
  readonly isOpen: (id: string) => boolean;
  readonly toggle: (id: string) => void;
}

const Context = createContext<Places | null>(null);

interface PlacesProviderProps {
  /** What to open on the way to each anchor, the outermost first. */
  readonly ways: Readonly<Record<string, readonly string[]>>;
  /** What the address asks for besides its anchor: a job. */
  readonly asked: string | null;
  /** What is open to begin with. */
  readonly open: readonly string[];
  /** Changes when the page was read again. */
  readonly version: number;
  readonly children: ReactNode;
}

/** Which lines of the page are open. A link to a line opens the way to it and brings it into sight. */
export function PlacesProvider({ ways, asked, open, version, children }: PlacesProviderProps) {
  const [opened, setOpened] = useState<ReadonlySet<string>>(() => new Set([...open, ...wayTo(ways, asked)]));
  const target = useRef<string | null>(null);
  const known = useRef(ways);

  useEffect(() => {
    known.current = ways;
  }, [ways]);

  useEffect(() => {
    const goTo = (anchor: string): void => {
      const way = known.current[anchor];
      if (way === undefined) {
        if (document.getElementById(anchor) === null && anchor.includes(':'))
          announce('What the link named is settled by now.');
        return;
      }
      target.current = way.at(-1) ?? anchor;
      setOpened((before) => new Set([...before, ...way]));
    };
    const fromAddress = (): void => goTo(decodeURIComponent(location.hash.slice(1)));
    // A link on this very page changes the address without a word to anybody.
    const fromClick = (event: MouseEvent): void => {
      const link = event.target instanceof Element ? event.target.closest('a') : null;
      if (link === null || link.pathname !== location.pathname || link.hash === '') return;
      goTo(decodeURIComponent(link.hash.slice(1)));
    };
    if (location.hash !== '') fromAddress();
    else if (asked !== null) goTo(asked);
    addEventListener('hashchange', fromAddress);
    document.addEventListener('click', fromClick);
    return () => {
      removeEventListener('hashchange', fromAddress);
      document.removeEventListener('click', fromClick);
    };
  }, [asked]);

  useLayoutEffect(() => {
    const id = target.current;
    const element = id === null ? null : document.getElementById(id);
    if (element === null) return;
    target.current = null;
    element.scrollIntoView({ block: 'start' });
    element.querySelector<HTMLElement>('button, a')?.focus({ preventScroll: true });
  }, [opened]);

  useFocusKept(version);

  const toggle = (id: string): void =>
    setOpened((before) => {
      const next = new Set(before);
      if (!next.delete(id)) next.add(id);
      return next;
    });

  return <Context value={{ isOpen: (id) => opened.has(id), toggle }}>{children}</Context>;
}

const wayTo = (ways: PlacesProviderProps['ways'], anchor: string | null): readonly string[] =>
  anchor === null ? [] : (ways[anchor] ?? []);

export const usePlaces = (): Places => {
  const places = use(Context);
  if (places === null) throw new Error('A line stands outside PlacesProvider.');
  return places;
};

/** When the line one was at is gone after the page was read again, the focus goes to the next that is left. */
const useFocusKept = (version: number): void => {
  const order = useRef<readonly string[]>([]);
  const last = useRef<string | null>(null);

  useEffect(() => {
    const note = (event: FocusEvent): void => {
      const row = event.target instanceof Element ? event.target.closest('[data-row]') : null;
      if (row === null) return;
      last.current = row.id;
      order.current = Array.from(document.querySelectorAll('[data-row]'), ({ id }) => id);
    };
    document.addEventListener('focusin', note);
    return () => document.removeEventListener('focusin', note);
  }, []);

  useEffect(() => {
    const at = last.current === null ? -1 : order.current.indexOf(last.current);
    if (at < 0 || (document.activeElement !== null && document.activeElement !== document.body)) return;
    const next = [...order.current.slice(at), ...order.current.slice(0, at).reverse()].find(
      (id) => document.getElementById(id) !== null,
    );
    const row = next === undefined ? null : document.getElementById(next);
    (row?.querySelector<HTMLElement>('button') ?? document.getElementById('loose'))?.focus();
  }, [version]);
};
