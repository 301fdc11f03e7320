'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { TextField } from '@/components/ui/field';
import type { Unit } from '@/lib/domain/base/units';
import type { JointView } from '@/lib/wire/views/sign-off';
import { capital, these } from './model/words';

/** Asked once: the value would fit if the tool showed another unit. */
export function UnitDialog(props: {
  readonly typed: string;
  readonly units: readonly Unit[];
  readonly shown: Unit;
  /** Read before in the unit so far; they would be read again. */
  readonly readBefore: number;
  readonly onSay: (unit: Unit) => void;
  readonly onClose: () => void;
}) {
  const { typed, units, shown, readBefore, onSay, onClose } = props;
  return (
    <Dialog open onClose={onClose} labelledBy="so-unit" className="so-dialog">
      <header>
        <h2 id="so-unit">Which unit does the tool show?</h2>
      </header>
      <div className="in">
        <p>
          {typed} {shown} lies far from the value, and would fit in another unit. Look at the scale, not at
          the screen.
          {readBefore > 0 ? ' In another unit, what was read before is read again.' : ''}
        </p>
        <div className="so-bigacts">
          {units.map((unit) => (
            <Button
              key={unit}
              onClick={() => {
                onSay(unit);
              }}
            >
              {typed} {unit}
            </Button>
          ))}
        </div>
        <Button kind="quiet" onClick={onClose}>
          I mistyped it
        </Button>
      </div>
    </Dialog>
  );
}

/** Leaving half way: says what goes, and lets it go visibly. */
export function LeaveDialog(props: {
  readonly begun: string;
  readonly isOwed: boolean;
  readonly onLeave: () => void;
  readonly onClose: () => void;
}) {
  return (
    <Dialog open onClose={props.onClose} labelledBy="so-leave" className="so-dialog">
      <header>
        <h2 id="so-leave">Leave half way?</h2>
      </header>
      <div className="in">
        <p>
          <b>{capital(props.begun)}</b> of this pass {props.begun.startsWith('1 ') ? 'is' : 'are'} done and
          not signed. A pass is made in one sitting: left half way, it starts again.
          {props.isOwed
            ? ' What is still on its way to the server is kept on this device until it is there.'
            : ''}
        </p>
        <div className="so-bigacts">
          <Button onClick={props.onClose}>Stay and finish</Button>
          <Button kind="stop" onClick={props.onLeave}>
            Discard and leave
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** Toggles for the fasteners that something is said about. */
export function Fasteners(props: {
  readonly joint: JointView;
  readonly chosen: readonly number[];
  readonly onChosen: (fasteners: readonly number[]) => void;
  readonly label: string;
}) {
  const { joint, chosen, onChosen, label } = props;
  if (joint.fasteners === 1) return null;
  const inNumber = [...joint.order].sort((a, b) => a - b);
  return (
    <div className="so-toggles" role="group" aria-label={label}>
      {inNumber.map((fastener) => {
        const isOn = chosen.includes(fastener);
        return (
          <button
            key={fastener}
            type="button"
            aria-pressed={isOn}
            aria-label={`${joint.word.one} ${String(fastener)}`}
            onClick={() => {
              onChosen(isOn ? chosen.filter((each) => each !== fastener) : [...chosen, fastener]);
            }}
          >
            {fastener}
          </button>
        );
      })}
      <button
        type="button"
        className="alt"
        onClick={() => {
          onChosen(chosen.length === joint.fasteners ? [] : inNumber);
        }}
      >
        {chosen.length === joint.fasteners ? 'None' : 'All'}
      </button>
    </div>
  );
}

/** Loosened, whatever the reason: it is never refused, and says what it brings. */
export function OpenDialog(props: {
  readonly joint: JointView;
  readonly preset: readonly number[];
  readonly reason: string;
  readonly onOpen: (fasteners: readonly number[], reason: string) => void;
  readonly onClose: () => void;
}) {
  const { joint, preset, onOpen, onClose } = props;
  const [chosen, setChosen] = useState(joint.fasteners === 1 ? [1] : preset);
  const [reason, setReason] = useState(props.reason);
  return (
    <Dialog open onClose={onClose} labelledBy="so-open" className="so-dialog">
      <header>
        <h2 id="so-open">Which {joint.word.many} were loosened?</h2>
      </header>
      <div className="in">
        <Fasteners joint={joint} chosen={chosen} onChosen={setChosen} label={`Loosened ${joint.word.many}`} />
        <TextField
          label="Why"
          value={reason}
          onChange={(event) => {
            setReason(event.target.value);
          }}
        />
        <p className="small">
          One-time hardware of {these(chosen, joint.fasteners, joint.word)} is spent and goes in new. A new
          cycle begins: the full pass is made on all {joint.fasteners === 1 ? '' : joint.fasteners}, and
          signed and verified anew.
        </p>
        <div className="so-bigacts">
          <Button onClick={onClose}>Not opened</Button>
          <Button
            kind="stop"
            held={chosen.length === 0}
            onClick={() => {
              onOpen(chosen, reason.trim());
            }}
          >
            {chosen.length === 0 ? 'Which ones' : `Opened: ${these(chosen, joint.fasteners, joint.word)}`}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
