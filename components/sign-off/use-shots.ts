'use client';

/** Photographs taken at the sheet: they go with whatever is signed or said next about the joint, and wait until then. */
import { useCallback, useEffect, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import type { CarClaim } from '@/lib/domain/commands';
import { photoDrafts } from '@/lib/offline/photo-drafts';
import type { PhotoPlace } from '@/lib/offline/photo-drafts';
import type { SignOffView } from '@/lib/wire/views/sign-off';

export interface Shots {
  readonly place: PhotoPlace;
  /** Rises when the field is to look anew for what waits. */
  readonly round: number;
  readonly kept: readonly string[];
  /** Taken, and on no way to be named yet. */
  readonly unsent: number;
  readonly tell: (kept: readonly string[], unsent: number) => void;
  /** Those that may be named, for a claim. */
  readonly claimed: { readonly photos?: readonly string[] };
  /** An act was accepted: what it named stands in the record. */
  readonly given: (claim: CarClaim) => Promise<void>;
  readonly discard: () => Promise<void>;
}

const actOf = (joint: string, cycle: number): string => `joint ${joint} ${String(cycle)}`;

export const useShots = ({ car, joint }: SignOffView, person: string): Shots => {
  const [{ kept, unsent }, setTaken] = useState<Pick<Shots, 'kept' | 'unsent'>>({ kept: [], unsent: 0 });
  const [round, setRound] = useState(0);
  const act = actOf(joint.key, joint.cycle);
  const carId = car.id;
  const tell = useCallback((now: readonly string[], waiting: number) => {
    setTaken({ kept: now, unsent: waiting });
  }, []);

  // It was opened since: what was taken before shows what is no longer there.
  useEffect(() => {
    const close = async (): Promise<void> => {
      const waiting = await photoDrafts.waiting(person, carId);
      const old = waiting.filter(({ place }) => isOld(place.act, joint.key, joint.cycle));
      await Promise.all(old.map(({ key }) => photoDrafts.remove(key)));
      if (old.length > 0) announce('Photographs of an earlier cycle that went with nothing are closed.');
    };
    void close().catch(() => undefined);
  }, [person, carId, joint.key, joint.cycle]);

  const place = { person, car: carId, act };
  const again = (): void => {
    setRound((before) => before + 1);
  };
  return {
    place,
    round,
    kept,
    unsent,
    tell,
    claimed: kept.length === 0 ? {} : { photos: kept },
    given: async (claim) => {
      const named = 'photos' in claim ? (claim.photos ?? []) : [];
      if (named.length === 0) return;
      await photoDrafts.given(place, named).catch(() => undefined);
      again();
    },
    discard: async () => {
      await photoDrafts.clear(place).catch(() => undefined);
      again();
    },
  };
};

const isOld = (act: string, joint: string, cycle: number): boolean => {
  const [type, key, of] = act.split(' ');
  return type === 'joint' && key === joint && Number(of) < cycle;
};
