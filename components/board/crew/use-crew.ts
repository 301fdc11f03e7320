'use client';

import { useRouter } from 'next/navigation';
import { createContext, startTransition, use, useState } from 'react';
import { announce } from '@/components/ui/live-region';
import { sendCommand } from '@/lib/offline/send-command';
import type { SentAnswer } from '@/lib/offline/send-command';
import type { BoardPerson } from '@/lib/wire/views/board';
import { isOn, lacksText, spotName } from './crew-words';
import type { Spot } from './crew-words';

interface Said {
  readonly text: string;
  readonly isTrouble: boolean;
  /** Asks for an answer that never came. */
  readonly again: (() => void) | null;
}

/** What another lead does to the same list meanwhile stays. */
interface Moved {
  readonly add: readonly string[];
  readonly remove: readonly string[];
}

/** Giving stages to people, by whatever means: a chip dragged, a chip and a cell pressed, or check boxes. */
export const useCrew = (people: readonly BoardPerson[] | null) => {
  const router = useRouter();
  const [inHand, setInHand] = useState<BoardPerson | null>(null);
  const [asked, setAsked] = useState<{ readonly car: string; readonly stage: number } | null>(null);
  const [said, setSaid] = useState<Said | null>(null);
  const [isBusy, setBusy] = useState(false);

  const tell = (text: string, again: (() => void) | null = null, isTrouble = again !== null): void => {
    setSaid({ text, isTrouble, again });
    announce(text, isTrouble ? 'assertive' : 'polite');
  };

  /** Who comes to the stage and who goes, and in words what that did. */
  const give = async (spot: Spot, { add, remove }: Moved, words: string): Promise<boolean> => {
    const key = spot.stages[spot.stage]?.key;
    if (key === undefined || isBusy) return false;
    setBusy(true);
    const take = (answer: SentAnswer): boolean => {
      if (answer.outcome === 'not-signed-in') {
        window.location.assign('/sign-in');
        return false;
      }
      if (answer.outcome === 'accepted') tell(words);
      else if (answer.outcome === 'unknown') tell(answer.says, () => void answer.again().then(take));
      else tell(`The crew stays as it was. ${whyText(answer)}`, null, true);
      startTransition(() => router.refresh());
      return answer.outcome === 'accepted';
    };
    const answer = await sendCommand(
      { type: 'assign', car: spot.car.id, job: `stage:${key}`, add, remove },
      { onRetry: () => tell('No answer yet. It is asked again; it can’t count twice.', null, true) },
    );
    setBusy(false);
    return take(answer);
  };

  return {
    people: people ?? [],
    may: people !== null,
    inHand,
    asked,
    said,
    isBusy,
    give,

    /** Takes a chip in the hand, or puts it back. */
    hold: (person: BoardPerson | null): void => {
      setInHand(person);
      setSaid(null);
      if (person !== null)
        announce(`${person.name} in hand. Choose a stage of a car; Escape puts the chip back.`);
    },

    ask: (at: { readonly car: string; readonly stage: number } | null) => setAsked(at),

    /** Those who are there already stay. */
    put: async (spot: Spot, person: BoardPerson): Promise<void> => {
      if (isOn(spot, person.id)) {
        tell(`${person.name} is on ${spotName(spot)} already.`);
        return;
      }
      const words = `${person.name} is on ${spotName(spot)}. ${lacksText(spot, person)}`.trim();
      await give(spot, { add: [person.id], remove: [] }, words);
    },

    takeOff: async (spot: Spot, person: BoardPerson): Promise<void> => {
      await give(spot, { add: [], remove: [person.id] }, `${person.name} is off ${spotName(spot)}.`);
    },
  };
};

export type Crew = ReturnType<typeof useCrew>;

type Refused = Exclude<SentAnswer, { readonly outcome: 'accepted' | 'unknown' }>;

const whyText = (answer: Refused): string => {
  switch (answer.outcome) {
    case 'refused':
      return answer.refusals.map(({ sentence }) => sentence).join(' ');
    case 'bad-input':
      return answer.fields.map(({ says }) => says).join(' ');
    default:
      return answer.says;
  }
};

export const CrewContext = createContext<Crew | null>(null);

/** The crew of the board that this stands on. */
export const useBoardCrew = (): Crew => {
  const crew = use(CrewContext);
  if (crew === null) throw new Error('A crew’s part stands outside its board.');
  return crew;
};
