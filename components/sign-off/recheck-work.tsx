'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import { Button } from '@/components/ui/button';
import { these } from './model/words';
import { DoubtList } from './doubt-list';
import { InTheWay } from './panels';
import { ReapplyTool, reapplyAt } from './reapply-tool';
import { goesWith, photosLeft } from './sheet-photos';
import { SignBar } from './sign-bar';
import { signers } from './snug-work';
import { Standing } from './standing';
import { DisturbedDialog } from './trouble-dialogs';
import { jointWords, SAY_WHICH_CAR } from './use-desk';
import type { Work } from './work';

/** Tried again with a good tool: either nothing moved, or it did. */
export function RecheckWork({ desk, notes, photoNote, onOther }: Work) {
  const { view, now } = desk;
  const { joint, car } = view;
  const [tool, setTool] = useState<string | null>(null);
  const [dialog, setDialog] = useState<'sign' | 'moved' | null>(null);
  const asksTool = joint.method !== 'firm';
  const left =
    desk.at.isSure === false
      ? SAY_WHICH_CAR
      : asksTool && tool === null
        ? 'choose the tool it is tried with'
        : photosLeft(desk);
  const close = (): void => {
    setDialog(null);
  };
  const on = { car: car.id, joint: joint.key, cycle: joint.cycle };
  return (
    <>
      <div className="so-mid">
        {notes.below}
        <InTheWay act="as rechecked" view={view.acts.recheck} />
        {notes.above}
        <DoubtList doubts={view.doubts} />
        <Standing desk={desk} />
        <section className="so-look">
          <h3>Try it again: nothing may move</h3>
          <ul>
            <li>
              <i aria-hidden="true" />
              {asksTool
                ? `${tool ?? 'a good tool'} on ${these(joint.order, joint.fasteners, joint.word)}, at ${reapplyAt(joint)}`
                : `${these(joint.order, joint.fasteners, joint.word)} tried by hand tool`}
            </li>
            <li>
              <i aria-hidden="true" />
              slip marks unbroken
            </li>
          </ul>
          <Button
            kind="stop"
            onClick={() => {
              setDialog('moved');
            }}
          >
            It moved
          </Button>
        </section>
      </div>
      <section className="so-pad" aria-label="Recheck" data-ready={desk.now.isReady || undefined}>
        {asksTool ? <ReapplyTool view={view} tool={tool} onTool={setTool} /> : null}
        <SignBar
          says="Nothing moved"
          why={left === '' ? 'signs the recheck, asks the PIN' : left}
          isHeld={left !== '' || desk.at.isSure !== true || desk.signing.state.is === 'asking'}
          onSign={() => {
            setDialog('sign');
          }}
        >
          {photoNote}
          {onOther}
        </SignBar>
      </section>
      {dialog === 'sign' ? (
        <PinDialog
          people={signers(view)}
          default={now.seat.worker}
          act="Sign recheck"
          says={`Tried again, nothing moved: ${jointWords(view)}${tool === null ? '' : `, with ${tool}`}.`}
          onClose={close}
          onPin={(signer) =>
            desk.say(
              'Recheck signed',
              {
                type: 'recheck-joint',
                ...on,
                ...(tool === null || !asksTool ? {} : { tool }),
                ...desk.shots.claimed,
              },
              signer,
            )
          }
        />
      ) : null}
      {dialog === 'moved' ? (
        <DisturbedDialog
          goesWith={goesWith(desk.shots)}
          joint={joint}
          onClose={close}
          onReport={(cause, fasteners) => {
            close();
            void desk.say('Reported. The joint is torqued again', {
              type: 'report-disturbed',
              ...on,
              cause,
              fasteners,
              ...desk.shots.claimed,
            });
          }}
        />
      ) : null}
    </>
  );
}
