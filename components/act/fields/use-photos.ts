'use client';

import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import { newId } from '@/lib/offline/new-id';
import { copyOf } from '@/lib/offline/photo-copy';
import type { Copied } from '@/lib/offline/photo-copy';
import { sendPhoto } from '@/lib/offline/send-photo';

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
}

export interface Photos {
  readonly taken: readonly TakenPhoto[];
  readonly take: (files: readonly File[]) => void;
  readonly again: (photo: TakenPhoto) => void;
  readonly remove: (photo: TakenPhoto) => void;
}

/** Photographs of one form. Whatever happens to the line, they stay here until they are kept or taken off. */
export const usePhotos = (
  car: string,
  most: number,
  tell: (kept: readonly string[], unsent: number) => void,
): Photos => {
  const [taken, setTaken] = useState<readonly TakenPhoto[]>([]);
  const urls = useRef(new Set<string>());

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

  const send = async (key: string, copied: Copied): Promise<void> => {
    change(key, { state: 'sent', part: 0, says: '' });
    const answer = await sendPhoto(copied.copy, { car, ...copied.about }, (part) => change(key, { part }));
    if (answer.outcome !== 'kept') {
      fail(key, answer.says);
      return;
    }
    change(key, { state: 'kept', part: 1, says: '' });
    announce('The photograph is kept.');
  };

  const start = async (key: string, file: File): Promise<void> => {
    const copying = await copyOf(file);
    if (!copying.ok) {
      fail(key, copying.says);
      return;
    }
    const url = URL.createObjectURL(copying.copy);
    urls.current.add(url);
    change(key, { url, copied: copying });
    await send(key, copying);
  };

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
        })),
      ]);
      for (const { key, file } of fresh) void start(key, file);
    },
    again: ({ key, copied }) => {
      if (copied !== null) void send(key, copied);
    },
    remove: ({ key }) => setTaken((before) => before.filter((each) => each.key !== key)),
  };
};
