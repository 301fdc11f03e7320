'use client';

import { useEffect, useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import { PIN_LENGTH, PinEntry } from '@/components/act/pin-entry';
import { useRest } from '@/components/act/use-rest';
import '@/components/act/pin-dialog.css';
import { Tiles } from '@/components/sign-in/tiles';
import '@/components/sign-in/sign-in.css';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { SignInPerson } from '@/lib/wire/views/sign-in';
import { askLock } from './ask-lock';
import type { LockedPerson } from './lock-screen';

interface LockCoverProps {
  readonly me: LockedPerson;
  readonly people: readonly SignInPerson[];
  readonly since: string;
  readonly to: string;
  readonly onOpen: () => void;
}

/** Over everything, dialogs too: who was there comes back by PIN and goes on; anybody else takes over in a session of their own. */
export function LockCover({ me, people, since, to, onOpen }: LockCoverProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const entry = useRef<HTMLInputElement>(null);
  const [chosen, setChosen] = useState(me.id);
  const [pin, setPin] = useState('');
  const [isBusy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const [hasEnded, setEnded] = useState(false);
  const rest = useRest();
  const mine: SignInPerson = { ...me, comesBy: 'bench', says: 'was here last' };
  const tiles = [mine, ...people.filter(({ id }) => id !== me.id)];
  const person = tiles.find(({ id }) => id === chosen) ?? mine;

  useEffect(() => {
    dialog.current?.showModal();
    entry.current?.focus();
  }, []);

  const give = async (given: string): Promise<void> => {
    if (isBusy || rest.seconds > 0 || given.length !== PIN_LENGTH) return;
    setBusy(true);
    setWrong(null);
    const answer = await askLock(
      chosen === me.id ? { act: 'unlock', pin: given } : { act: 'take-over', person: chosen, pin: given },
    );
    setPin('');
    setBusy(false);
    if (answer?.outcome === 'open') onOpen();
    else if (answer?.outcome === 'taken-over') {
      new BroadcastChannel('slipmark-lock').postMessage('taken-over');
      location.assign('/board');
    } else if (answer?.outcome === 'not-signed-in') setEnded(true);
    else {
      setWrong(
        answer === null || !('says' in answer)
          ? 'No answer came from the shop’s server. It stays locked; try again.'
          : answer.says,
      );
      if (answer?.outcome === 'wrong-pin') rest.begin(answer.waitSeconds ?? 0);
      entry.current?.focus();
    }
  };

  const type = (next: string): void => {
    setPin(next);
    if (next.length === PIN_LENGTH) void give(next);
  };

  // Figures count wherever the focus is: a keyboard at the bench needs no aim.
  const onKey = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === 'Escape') event.preventDefault();
    const isTyping = event.target instanceof HTMLInputElement && event.target.type === 'password';
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping) return;
    if (/^\d$/.test(event.key)) type((pin + event.key).slice(0, PIN_LENGTH));
    if (event.key === 'Backspace') setPin(pin.slice(0, -1));
  };

  return (
    <dialog
      ref={dialog}
      className="lockcover"
      aria-labelledby="lock-heading"
      onKeyDown={onKey}
      onCancel={(event) => event.preventDefault()}
      // A browser lets the second Escape through.
      onClose={() => dialog.current?.showModal()}
    >
      <header className="lock-head">
        <Glyph name="lock" size={40} />
        <div>
          <h2 id="lock-heading">Locked{since === '' ? '' : ` at ${since}`}</h2>
          <p>
            What {me.name} had begun here is kept. Only {me.name} can go on with it; anyone else begins
            afresh.
          </p>
        </div>
      </header>
      {/* A check that is timed keeps its face here (D55): it is put in by the check. */}
      <div id="lock-face" />
      {hasEnded ? (
        <p className="said bad" role="alert">
          <Glyph name="lock" />
          <span>The session here has ended. What was typed is kept on this device. </span>
          <a className="btn main" href={`/sign-in?to=${encodeURIComponent(to)}`}>
            Sign in
          </a>
        </p>
      ) : (
        <form
          className="lock-cols"
          autoComplete="off"
          onSubmit={(event) => {
            event.preventDefault();
            void give(pin);
          }}
        >
          <Tiles
            people={tiles}
            chosen={chosen}
            to={to}
            onChoose={(id) => {
              setChosen(id);
              setPin('');
              setWrong(null);
              rest.begin(0);
            }}
          />
          <div className="lock-pad">
            <PinEntry field={entry} name={person.name} pin={pin} onPin={type} />
            <p className="pin-wrong" role="alert">
              {wrong === null ? null : (
                <>
                  <Glyph name="failed" size={20} />{' '}
                  {rest.seconds > 0 ? `${wrong} Try again in ${String(rest.seconds)} s.` : wrong}
                </>
              )}
            </p>
            <Button kind="main" type="submit" className="pin-sign" held={isBusy || pin.length < PIN_LENGTH}>
              {chosen === me.id ? 'Unlock' : `Take over as ${person.name}`}
            </Button>
          </div>
        </form>
      )}
    </dialog>
  );
}
