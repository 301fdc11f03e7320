'use client';

import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import { newId } from '@/lib/offline/new-id';
import { copyOf } from '@/lib/offline/photo-copy';
import type { Copied } from '@/lib/offline/photo-copy';
import { photoDrafts } from '@/lib/offline/photo-drafts';
import type { PhotoPlace } from '@/lib/offline/photo-drafts';
import { sendPhoto } from '@/lib/offline/send-photo';
import { clockTime } from './clock-time';

/** One that was taken: on the way to being kept, kept, or not and why. */
export interface TakenPhoto {
  readonly key: string;
  readonly name: string;
  /** What is shown of it; null until it is drawn. */
  readonly url: string | null;
  readonly state: 'drawn' | 'sent' | 'kept' | 'failed';
  /** 0 to 1. */
  readonly part: number;
  readonly says: string;
  readonly copied: Copied | null;
  /** `10:52`, where the device had it from before; null = taken on this page. */
  readonly back: string | null;
  /** Why the device does not keep it; null where it does. */
  readonly onlyHere: string | null;
}

export interface Photos {
  readonly taken: readonly TakenPhoto[];
  readonly take: (files: readonly File[]) => void;
  readonly again: (photo: TakenPhoto) => void;
  readonly remove: (photo: TakenPhoto) => void;
}

/** A device that stores nothing, and does not say so, must not keep the hand waiting. */
const PATIENCE_MS = 4000;
const NOT_STORED = 'This device did not store it. Give the photograph before you leave the page.';

/** Photographs of one form. Whatever happens to the line or the page, they stay until they are given or taken off. */
export const usePhotos = (
  { person, car, act }: PhotoPlace,
  most: number,
  tell: (kept: readonly string[], unsent: number) => void,
): Photos => {
  const [taken, setTaken] = useState<readonly TakenPhoto[]>([]);
  const urls = useRef(new Set<string>());
  const takenOff = useRef(new Set<string>());

  const told = useEffectEvent(tell);
  useEffect(() => {
    const kept = taken.flatMap(({ state, copied }) =>
      state === 'kept' && copied !== null ? [copied.about.sha256] : [],
    );
    told([...new Set(kept)], taken.filter(({ state }) => state !== 'kept').length);
  }, [taken]);

  useEffect(() => {
    const made = urls.current;
    return () => {
      for (const url of made) URL.revokeObjectURL(url);
    };
  }, []);

  const change = (key: string, now: Partial<TakenPhoto>): void =>
    setTaken((before) => before.map((each) => (each.key === key ? { ...each, ...now } : each)));

  const fail = (key: string, says: string): void => {
    change(key, { state: 'failed', says });
    announce(`A photograph is not kept. ${says}`, 'assertive');
  };

  const shown = (copy: Blob): string => {
    const url = URL.createObjectURL(copy);
    urls.current.add(url);
    return url;
  };

  const send = async (key: string, copied: Copied): Promise<void> => {
    change(key, { state: 'sent', part: 0, says: '' });
    const answer = await sendPhoto(copied.copy, { car, ...copied.about }, (part) => change(key, { part }));
    if (answer.outcome !== 'kept') {
      fail(key, answer.says);
      return;
    }
    void photoDrafts.markSent(key).catch(() => undefined);
    change(key, { state: 'kept', part: 1, says: '' });
    announce('The photograph is kept.');
  };

  const store = async (key: string, name: string, { copy, about }: Copied): Promise<void> => {
    const place = { person, car, act };
    const late = new Promise<string>((resolve) => setTimeout(resolve, PATIENCE_MS, NOT_STORED));
    const onlyHere = await Promise.race([
      photoDrafts.keep({ key, place, name, about, isSent: false }, copy),
      late,
    ]);
    change(key, { onlyHere });
    if (onlyHere !== null) announce(`A reload would lose the photograph. ${onlyHere}`);
  };

  const start = async (key: string, file: File): Promise<void> => {
    const copying = await copyOf(file);
    if (!copying.ok) {
      fail(key, copying.says);
      return;
    }
    if (takenOff.current.has(key)) return;
    const copied: Copied = { copy: copying.copy, about: copying.about };
    change(key, { url: shown(copied.copy), copied });
    await Promise.all([store(key, file.name, copied), send(key, copied)]);
  };

  // What this device had from before, each once: what the shop has not got yet is sent again.
  const bringBack = useEffectEvent((found: Awaited<ReturnType<typeof photoDrafts.on>>): void => {
    const back = found.map(({ key, name, copy, about, takenAt, isSent }): TakenPhoto => ({
      key,
      name,
      url: shown(copy),
      state: isSent ? 'kept' : 'sent',
      part: isSent ? 1 : 0,
      says: '',
      copied: { copy, about },
      back: clockTime(takenAt),
      onlyHere: null,
    }));
    setTaken((before) => [...back, ...before]);
    for (const { key, state, copied } of back)
      if (state !== 'kept' && copied !== null) void send(key, copied);
  });
  useEffect(() => {
    let isGone = false;
    void photoDrafts.on({ person, car, act }).then(
      (found) => {
        if (!isGone && found.length > 0) bringBack(found);
      },
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [person, car, act]);

  return {
    taken,
    take: (files) => {
      const room = Math.max(0, most - taken.length);
      const fresh = files.slice(0, room).map((file) => ({ key: newId(), file }));
      if (files.length > room) announce(`No more than ${String(most)} go with it.`, 'assertive');
      setTaken((before) => [
        ...before,
        ...fresh.map(({ key, file }): TakenPhoto => ({
          key,
          name: file.name,
          url: null,
          state: 'drawn',
          part: 0,
          says: '',
          copied: null,
          back: null,
          onlyHere: null,
        })),
      ]);
      for (const { key, file } of fresh) void start(key, file);
    },
    again: ({ key, copied }) => {
      if (copied !== null) void send(key, copied);
    },
    remove: ({ key }) => {
      takenOff.current.add(key);
      void photoDrafts.remove(key).catch(() => undefined);
      setTaken((before) => before.filter((each) => each.key !== key));
    },
  };
};
