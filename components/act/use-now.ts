import { useSyncExternalStore } from 'react';

let now = 0;
let timer: ReturnType<typeof setInterval> | undefined;
const watchers = new Set<() => void>();

const watch = (changed: () => void): (() => void) => {
  watchers.add(changed);
  now = Date.now();
  timer ??= setInterval(() => {
    now = Date.now();
    for (const each of watchers) each();
  }, 1000);
  return () => {
    watchers.delete(changed);
    if (watchers.size > 0) return;
    clearInterval(timer);
    timer = undefined;
  };
};

const rest = (): (() => void) => () => undefined;

/** The device's clock, by the second, while it is asked for; null on the server and where it is not. */
export const useNow = (ticks: boolean): number | null =>
  useSyncExternalStore(
    ticks ? watch : rest,
    () => (ticks ? now : null),
    () => null,
  );
