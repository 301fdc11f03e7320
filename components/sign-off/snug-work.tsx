'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import type { PinPerson } from '@/components/act/pin-dialog';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { fittedClaims, fittedWords } from './model/fitted';
import { wantOf } from './model/want';
import { allOf } from './model/words';
import { InTheWay } from './panels';
import { photosLeft } from './sheet-photos';
import { SignBar } from './sign-bar';
import { ToolCard } from './tool-card';
import { jointWords, SAY_WHICH_CAR } from './use-desk';
import type { Work } from './work';

/** Fitted and run up to contact: no value, and no torque gate is met by it. */
export function SnugWork({ desk, notes, photoNote, onOther }: Work) {
  const { view, now } = desk;
  const { joint, car } = view;
  const [isOpen, setOpen] = useState(false);
  const isBusy = desk.signing.state.is === 'asking' || now.sitting.pending !== null;
  const left = desk.at.isSure === false ? SAY_WHICH_CAR : photosLeft(desk);
  const isNoValue = joint.specification.kind === 'no-value-yet' && joint.method !== 'sequence';
  return (
    <>
      <div className="so-mid">
        <InTheWay act="snug" view={view.acts.snug} />
        {notes.above}
        <ToolCard
          view={view}
          want={wantOf(view)}
          set={null}
          tool={null}
          adapter={null}
          noToolSays="Snug: no torque tool"
        />
        <section className="sheet so-plain">
          <h2>Run up to contact</h2>
          <p>
            Hardware in, {allOf(joint.fasteners, joint.word)} run up until{' '}
            {joint.fasteners === 1 ? 'it touches' : 'they touch'}. Snug carries no value and meets no torque
            gate: the final comes later
            {view.needs.length === 0
              ? ''
              : `, when this holds: ${view.needs.map(({ says }) => says.replace(/ is not so.*$/, '')).join(', ')}`}
            .
          </p>
          {isNoValue ? (
            <p>
              <b>The plan has no torque for it yet.</b> It stays snug until a plan revision brings the value.
            </p>
          ) : null}
        </section>
        {notes.below}
      </div>
      <section className="so-pad" aria-label="Sign" data-ready={desk.now.isReady || undefined}>
        <SignBar
          says="Sign snug"
          why={left === '' ? 'asks the PIN of who did it' : left}
          isHeld={isBusy || left !== '' || desk.at.isSure !== true}
          onSign={() => {
            setOpen(true);
          }}
        >
          {photoNote}
          {onOther}
        </SignBar>
      </section>
      {isOpen ? (
        <PinDialog
          people={signers(view)}
          default={now.seat.worker}
          act="Sign snug"
          says={`Snug, no value: ${jointWords(view)}.${fittedWords(view.hardware, now.sitting.hardware)}`}
          onClose={() => {
            setOpen(false);
          }}
          onPin={(signer) =>
            desk.signSitting(
              'Signed snug',
              {
                type: 'snug-joint',
                car: car.id,
                joint: joint.key,
                cycle: joint.cycle,
                ...desk.shots.claimed,
                ...fittedClaims(view.hardware, now.sitting.hardware),
              },
              { signer },
            )
          }
        />
      ) : null}
    </>
  );
}

export const signers = ({ people }: SignOffView): readonly PinPerson[] =>
  people.map(({ id, name, whyNotSign }) => ({
    id,
    name,
    ...(whyNotSign === null ? {} : { whyNot: whyNotSign }),
  }));
