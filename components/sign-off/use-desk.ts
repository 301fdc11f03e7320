'use client';

/** Everything that the sheet works with: the view, the sitting, the bench to judge on, and the ways to the door. */
import { useRouter } from 'next/navigation';
import { useCallback, useMemo } from 'react';
import type { CarClaim } from '@/lib/domain/commands';
import type { SentAnswer } from '@/lib/offline/send-command';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { benchOf } from './model/judge';
import type { Bench } from './model/judge';
import { adapterOf, firstWay, toolOf } from './model/ways';
import { useAtCar } from './use-at-car';
import type { AtCar } from './use-at-car';
import { useDrafts } from './use-drafts';
import type { SittingNow } from './use-drafts';
import { useOver } from './use-over';
import { useShots } from './use-shots';
import type { Shots } from './use-shots';
import { useSigning } from './use-signing';
import type { GiveOptions, Signing } from './use-signing';

export interface Desk {
  readonly view: SignOffView;
  /** Who is signed in on this device. */
  readonly present: string;
  /** Whether they have said that it is this car they stand at: until then nothing is entered or signed. */
  readonly at: AtCar;
  readonly now: SittingNow;
  readonly shots: Shots;
  readonly bench: Bench;
  readonly signing: Signing;
  /** What the door said of a warning about an over-torqued fastener that it has not taken. */
  readonly overAnswer: SentAnswer | null;
  /** Signs what the sitting holds; it is kept until there is an answer and goes when it is accepted. */
  readonly signSitting: (what: string, claim: CarClaim, options: SignOptions) => Promise<SentAnswer>;
  /** Signs or says something that no draft belongs to. */
  readonly say: (what: string, claim: CarClaim, signer?: GiveOptions['signer']) => Promise<SentAnswer>;
}

export type SignOptions = Pick<GiveOptions, 'signer' | 'earlier'>;

/** Whoever is signed in, where they may sign; else somebody who is on the work. */
const firstWorker = (view: SignOffView, present: string): string => {
  const may = view.people.filter(({ whyNotSign }) => whyNotSign === null);
  return (may.find(({ id }) => id === present) ?? may.find(({ isOnIt }) => isOnIt))?.id ?? '';
};

export const useDesk = (view: SignOffView, present: string): Desk => {
  const router = useRouter();
  const now = useDrafts(view, { worker: firstWorker(view, present), way: firstWay(view) });
  const at = useAtCar(view.car.id, present);
  const shots = useShots(view, present);
  const signing = useSigning(view.car.id);
  const refresh = useCallback(() => {
    router.refresh();
  }, [router]);
  const overAnswer = useOver(now, refresh);
  const { way } = now.seat;
  const { joint, day, judgedAt } = view;
  const tool = toolOf(view, way);
  const adapter = adapterOf(view, way);
  const bench = useMemo(
    () => benchOf(joint, tool, adapter, { day, judgedAt }),
    [joint, tool, adapter, day, judgedAt],
  );
  return {
    view,
    present,
    at,
    now,
    shots,
    bench,
    signing,
    overAnswer,
    signSitting: (what, claim, options) =>
      signing.give(what, claim, {
        ...options,
        ...(now.sitting.retryOf === null || options.earlier !== undefined
          ? {}
          : { retryOf: now.sitting.retryOf }),
        onSend: (pending) => now.change((sitting) => ({ ...sitting, pending })),
        onAnswer: async (answer, { id, claim: given }) => {
          if (answer.outcome === 'unknown') return;
          await now.change((sitting) => ({
            ...sitting,
            pending: null,
            retryOf: answer.outcome === 'refused' ? id : sitting.retryOf,
          }));
          if (answer.outcome === 'accepted') await Promise.all([now.settle(), shots.given(given)]);
          if (answer.outcome === 'accepted' || answer.outcome === 'refused') refresh();
        },
      }),
    say: (what, claim, signer) =>
      signing.give(what, claim, {
        ...(signer === undefined ? {} : { signer }),
        onAnswer: async (answer) => {
          if (answer.outcome !== 'accepted') return;
          await shots.given(claim);
          refresh();
        },
      }),
  };
};

/** Why nothing is signed yet: nobody has said that this is the car. */
export const SAY_WHICH_CAR = 'first say that it is this car';

export const nameOf = (view: SignOffView, id: string): string =>
  view.people.find((person) => person.id === id)?.name ?? id;

/** `Spring front eye, left, of C54-012, Bottle green`. */
export const jointWords = ({ joint, car }: SignOffView): string =>
  `${joint.name}${joint.position === null ? '' : `, ${joint.position}`} (${joint.key}) of ${car.chassis}${car.colour === null ? '' : `, ${car.colour}`}`;
