'use client';

/**
 * Which car the person at this device stands at, as they said: asked once for each car and sitting. Another car, another
 * person or a long while away ends it. It is kept for this window alone, and no rule rests on it.
 */
import { useCallback, useEffect, useState } from 'react';

const KEY = 'slipmark.at-car';
/** From one break to the next. */
const SITTING_MS = 4 * 60 * 60 * 1000;

export interface AtCar {
  /** Null until the device has been asked. */
  readonly isSure: boolean | null;
  readonly confirm: () => void;
}

interface Kept {
  readonly car: string;
  readonly person: string;
  readonly at: number;
}

const isKept = (given: unknown): given is Kept =>
  typeof given === 'object' &&
  given !== null &&
  'car' in given &&
  'person' in given &&
  'at' in given &&
  typeof given.at === 'number';

const isStillAt = (car: string, person: string): boolean => {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? 'null');
    return isKept(kept) && kept.car === car && kept.person === person && Date.now() - kept.at < SITTING_MS;
  } catch {
    return false;
  }
};

export const useAtCar = (car: string, person: string): AtCar => {
  const [isSure, setSure] = useState<boolean | null>(null);
  useEffect(() => {
    setSure(isStillAt(car, person));
  }, [car, person]);
  const confirm = useCallback(() => {
    setSure(true);
    try {
      sessionStorage.setItem(KEY, JSON.stringify({ car, person, at: Date.now() } satisfies Kept));
    } catch {
      // A browser that keeps nothing asks again at the next sheet.
    }
  }, [car, person]);
  return { isSure, confirm };
};
