'use client';

import { useState } from 'react';
import type { SetUpTablet } from '@/lib/wire/views/set-up';
import { AskDialog } from './ask-dialog';
import { TabletFields } from './tablet-fields';
import { useTabletPost } from './use-tablet-post';
import { Wrong } from './wrong';

interface TabletDialogProps {
  readonly tablet: SetUpTablet;
  readonly onClose: () => void;
}

/** Another name, another rest. */
export function ChangeTabletDialog({ tablet, onClose }: TabletDialogProps) {
  const post = useTabletPost();
  const [name, setName] = useState(tablet.name);
  const [minutes, setMinutes] = useState(String(tablet.minutes));
  return (
    <AskDialog
      title={`Change ${tablet.name}`}
      act="Keep it so"
      isBusy={post.isBusy}
      said={<Wrong says={post.wrong} />}
      onAct={() =>
        void post.send(
          { act: 'change', device: tablet.device, name, minutes: Number(minutes) },
          `${name} is changed.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <TabletFields name={name} minutes={minutes} onName={setName} onMinutes={setMinutes} />
    </AskDialog>
  );
}

/** Takes it off; whoever is on it is out with the next press. */
export function RevokeTabletDialog({ tablet, onClose }: TabletDialogProps) {
  const post = useTabletPost();
  return (
    <AskDialog
      title={`Take ${tablet.name} off the list?`}
      act="Take it off"
      kind="stop"
      isBusy={post.isBusy}
      said={<Wrong says={post.wrong} />}
      onAct={() =>
        void post.send({ act: 'revoke', device: tablet.device }, `${tablet.name} is taken off.`, onClose)
      }
      onClose={onClose}
    >
      <p>
        {tablet.who === null
          ? 'Nobody is signed in on it.'
          : `${tablet.who} is signed in on it, and is out with the next press.`}{' '}
        No PIN is taken there any more, to sign in or to sign. An owner can enrol it again.
      </p>
      {tablet.isThis ? <p>This is the browser before you: you are signed out of it too.</p> : null}
    </AskDialog>
  );
}
