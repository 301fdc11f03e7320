'use client';

import { useId, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import type { SetUpTablet } from '@/lib/wire/views/set-up';
import { TabletFields } from './tablet-fields';
import { useTabletPost } from './use-tablet-post';

interface TabletDialogProps {
  readonly tablet: SetUpTablet;
  readonly onClose: () => void;
}

const Wrong = ({ says }: { readonly says: string | null }) =>
  says === null ? null : (
    <p className="said bad" role="alert">
      {says}
    </p>
  );

/** Another name, another rest. */
export function ChangeTabletDialog({ tablet, onClose }: TabletDialogProps) {
  const heading = useId();
  const post = useTabletPost();
  const [name, setName] = useState(tablet.name);
  const [minutes, setMinutes] = useState(String(tablet.minutes));
  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void post.send(
            { act: 'change', device: tablet.device, name, minutes: Number(minutes) },
            `${name} is changed.`,
            onClose,
          );
        }}
      >
        <header>
          <h2 id={heading}>Change {tablet.name}</h2>
        </header>
        <div className="in">
          <TabletFields name={name} minutes={minutes} onName={setName} onMinutes={setMinutes} />
          <Wrong says={post.wrong} />
          <div className="acts">
            <Button kind="main" type="submit" held={post.isBusy}>
              Keep it so
            </Button>
            <Button kind="quiet" onClick={onClose}>
              Not now
            </Button>
          </div>
        </div>
      </form>
    </Dialog>
  );
}

/** Takes it off; whoever is on it is out with the next press. */
export function RevokeTabletDialog({ tablet, onClose }: TabletDialogProps) {
  const heading = useId();
  const post = useTabletPost();
  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <header>
        <h2 id={heading}>Take {tablet.name} off the list?</h2>
      </header>
      <div className="in">
        <p>
          {tablet.who === null
            ? 'Nobody is signed in on it.'
            : `${tablet.who} is signed in on it, and is out with the next press.`}{' '}
          No PIN is taken there any more, to sign in or to sign. An owner can enrol it again.
        </p>
        {tablet.isThis ? <p>This is the browser before you: you are signed out of it too.</p> : null}
        <Wrong says={post.wrong} />
        <div className="acts">
          <Button
            kind="stop"
            held={post.isBusy}
            onClick={() =>
              void post.send(
                { act: 'revoke', device: tablet.device },
                `${tablet.name} is taken off.`,
                onClose,
              )
            }
          >
            Take it off
          </Button>
          <Button kind="quiet" onClick={onClose}>
            Not now
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
