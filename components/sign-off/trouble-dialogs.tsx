'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { TextField } from '@/components/ui/field';
import type { JointView } from '@/lib/wire/views/sign-off';
import { Fasteners } from './small-dialogs';

/** Two things that can be seen or felt; each is written down as it is, by whoever finds it. */
export function DisturbedDialog(props: {
  readonly joint: JointView;
  /** `One photograph goes with it`; empty where none does. */
  readonly goesWith: string;
  readonly onReport: (cause: 'stripe-broken' | 'moved', fasteners: readonly number[]) => void;
  readonly onClose: () => void;
}) {
  const { joint, goesWith, onReport, onClose } = props;
  const [chosen, setChosen] = useState<readonly number[]>(joint.fasteners === 1 ? [1] : []);
  const isHeld = chosen.length === 0;
  return (
    <Dialog open onClose={onClose} labelledBy="so-disturbed" className="so-dialog">
      <header>
        <h2 id="so-disturbed">It is not as it was signed</h2>
      </header>
      <div className="in">
        <p>
          The joint is in doubt from now on and is torqued again in full; a finding is opened.
          {goesWith === '' ? '' : ` ${goesWith}.`}
        </p>
        <Fasteners joint={joint} chosen={chosen} onChosen={setChosen} label={`Which ${joint.word.many}`} />
        <div className="so-bigacts">
          <Button
            kind="stop"
            held={isHeld}
            onClick={() => {
              onReport('stripe-broken', chosen);
            }}
          >
            Stripe broken
          </Button>
          <Button
            kind="stop"
            held={isHeld}
            onClick={() => {
              onReport('moved', chosen);
            }}
          >
            Moved when tried
          </Button>
        </div>
        <Button kind="quiet" onClick={onClose}>
          Nothing to report
        </Button>
      </div>
    </Dialog>
  );
}

const USUAL = [
  'Stripe is broken',
  'Stripe is missing',
  'Wrong hardware',
  'Thread does not show',
  'Moved when tried',
];

/** The second person does not agree: what is wrong is asked, and nothing else. */
export function RejectDialog(props: {
  readonly name: string;
  readonly goesWith: string;
  readonly onReject: (reason: string) => void;
  readonly onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  return (
    <Dialog open onClose={props.onClose} labelledBy="so-reject" className="so-dialog">
      <header>
        <h2 id="so-reject">What is not right?</h2>
      </header>
      <div className="in">
        <div className="so-usual">
          {USUAL.map((text) => (
            <Button
              key={text}
              aria-pressed={reason === text}
              onClick={() => {
                setReason(text);
              }}
            >
              {text}
            </Button>
          ))}
        </div>
        <TextField
          label="In your own words"
          value={reason}
          onChange={(event) => {
            setReason(event.target.value);
          }}
        />
        <p className="small">
          {props.name} rejects it. The joint is in doubt and is torqued again in full; a finding is opened.
          {props.goesWith === '' ? '' : ` ${props.goesWith}.`}
        </p>
        <div className="so-bigacts">
          <Button onClick={props.onClose}>Back to the joint</Button>
          <Button
            kind="stop"
            held={reason.trim() === ''}
            onClick={() => {
              props.onReject(reason.trim());
            }}
          >
            Not right
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
