'use client';

import { useEffect, useId, useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import type { SentAnswer } from '@/lib/offline/send-command';
import { PIN_LENGTH, PinEntry } from './pin-entry';
import { SignerList } from './signer-list';
import type { PinPerson } from './signer-list';
import { useRest } from './use-rest';
import './pin-dialog.css';

export type { PinPerson };

export interface Signer {
  readonly person: string;
  readonly pin: string;
}

interface PinDialogProps {
  /** Everybody who could be meant; who may not has the reason beside the name (D56). */
  readonly people: readonly PinPerson[];
  /** Who is meant until somebody else is chosen: the one signed in. */
  readonly default: string;
  /** What is signed, in words: stands above the keys. */
  readonly says: string;
  /** What the button says. */
  readonly act?: string;
  /** Gives the command. A wrong PIN keeps the dialog open; whatever else comes of it is the caller's to show. */
  readonly onPin: (signer: Signer) => Promise<SentAnswer>;
  readonly onClose: () => void;
}

/** Who signs, and their PIN: asked at each signature (D4). Nothing is signed by the last figure, only by the button. */
export function PinDialog({ people, default: meant, says, act = 'Sign', onPin, onClose }: PinDialogProps) {
  const heading = useId();
  const mayMeant = people.some(({ id, whyNot }) => id === meant && whyNot === undefined);
  const [person, setPerson] = useState(mayMeant ? meant : '');
  const [pin, setPin] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const rest = useRest();
  const entry = useRef<HTMLInputElement>(null);
  const [before] = useState(() => document.activeElement);
  useEffect(() => {
    // Whoever is meant already has only figures to give.
    if (mayMeant) entry.current?.focus();
  }, [mayMeant]);
  useEffect(
    () => () => {
      // The dialog goes at once, without closing: it gives the focus back itself.
      if (before instanceof HTMLElement) before.focus();
    },
    [before],
  );
  const chosen = people.find(({ id }) => id === person);
  const ready = chosen !== undefined && pin.length === PIN_LENGTH && !busy && rest.seconds === 0;

  const sign = async (): Promise<void> => {
    if (!ready) return;
    setBusy(true);
    setWrong(null);
    const answer = await onPin({ person, pin });
    setBusy(false);
    setPin('');
    if (answer.outcome !== 'wrong-pin') {
      onClose();
      return;
    }
    setWrong(answer.says);
    rest.begin(answer.waitSeconds ?? 0);
    announce(answer.says, 'assertive');
  };

  // Figures count wherever the focus is: a keyboard at the bench needs no aim.
  const onKey = (event: KeyboardEvent): void => {
    const isTyping = event.target instanceof HTMLInputElement && event.target.type === 'password';
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping) return;
    if (/^\d$/.test(event.key)) setPin((before) => (before + event.key).slice(0, PIN_LENGTH));
    if (event.key === 'Backspace') setPin((before) => before.slice(0, -1));
  };

  return (
    <Dialog open onClose={onClose} labelledBy={heading} className="pin">
      <form
        className="pin-grid"
        autoComplete="off"
        onKeyDown={onKey}
        onSubmit={(event) => {
          event.preventDefault();
          void sign();
        }}
      >
        <header className="pin-head">
          <h2 id={heading}>{act}</h2>
          <p>{says}</p>
        </header>
        <SignerList people={people} chosen={person} onChoose={setPerson} />
        <div className="pin-pad">
          <PinEntry field={entry} name={chosen?.name ?? null} pin={pin} onPin={setPin} />
          <p className="pin-wrong" role="alert">
            {wrong === null ? null : (
              <>
                <Glyph name="failed" size={20} />{' '}
                {rest.seconds > 0 ? `${wrong} Try again in ${String(rest.seconds)} s.` : wrong}
              </>
            )}
          </p>
        </div>
        <div className="pin-acts">
          <Button kind="quiet" onClick={onClose}>
            Not now
          </Button>
          <Button kind="main" type="submit" held={!ready} className="pin-sign">
            {busy ? 'Signing' : chosen === undefined ? 'Choose who signs' : `${act} as ${chosen.name}`}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
