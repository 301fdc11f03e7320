'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import { asksOf, isByHand } from './model/asks';
import { fittedClaims, fittedWords } from './model/fitted';
import { evidenceOf, judgeAll } from './model/judge';
import { currentAsk, isOver, isSettled } from './model/moves';
import { countOf, isBegun, isOwed } from './model/sitting';
import { wayId } from './model/ways';
import type { Way } from './model/ways';
import { leftWords, orWords } from './model/words';
import { FinalMid } from './final-mid';
import { FinalPad } from './final-pad';
import { OverPanel } from './over-panel';
import { InTheWay } from './panels';
import { photosLeft } from './sheet-photos';
import { SignBar, ThenVerified } from './sign-bar';
import { ToolDialog } from './tool-dialog';
import type { Work } from './work';
import { jointWords, nameOf, SAY_WHICH_CAR } from './use-desk';
import type { Desk } from './use-desk';
import { Worker } from './worker';

/** Brought to final: tool, passes, readings, and then the PIN. */
export function FinalWork({ desk, notes, onOpened, photoNote, onOther }: Work) {
  const { view, now, bench } = desk;
  const { sitting, seat } = now;
  const [dialog, setDialog] = useState<'tool' | 'pin' | null>(null);
  const isDone = desk.signing.state.is === 'asking' || sitting.pending !== null;
  const isLocked = isDone || sitting.over.length > 0 || seat.worker === '' || desk.at.isSure !== true;
  const current = sitting.over.length > 0 ? overAsk(desk) : currentAsk(bench, sitting);
  const left = whatIsLeft(desk);
  const tool = wayId(seat.way).replace(' ', ' and ');
  return (
    <>
      <FinalMid
        desk={desk}
        current={current}
        isLocked={isLocked}
        onTool={() => {
          setDialog('tool');
        }}
        above={
          <>
            <InTheWay act="final" view={view.acts.final} />
            {notes.above}
          </>
        }
        below={
          <>
            {sitting.over.length > 0 ? <OverPanel desk={desk} onOpened={onOpened} /> : null}
            {notes.below}
          </>
        }
      />
      <section className="so-pad" aria-label="Enter and sign" data-ready={desk.now.isReady || undefined}>
        {isByHand(view.joint) ? (
          <p className="so-firm">
            <b>Firm:</b> {view.joint.firmMeans ?? 'tight by hand tool'}. No value is published, so none is
            recorded, and the record says so.
          </p>
        ) : (
          <FinalPad desk={desk} current={current} isLocked={isLocked} />
        )}
        <SignBar
          says="Sign final"
          why={left === '' ? `asks ${nameOf(view, seat.worker)}’s PIN` : left}
          isHeld={left !== '' || isLocked}
          onSign={() => {
            setDialog('pin');
          }}
        >
          <Worker desk={desk} />
          {photoNote}
          {view.joint.dueLevel === 'verified' ? <ThenVerified {...verifiers(desk)} /> : null}
          {sitting.over.length > 0 ? null : onOther}
        </SignBar>
      </section>
      {dialog === 'tool' ? (
        <ToolDialog
          view={view}
          chosen={seat.way}
          begun={isBegun(sitting) ? countOf(sitting, view.joint.word) : null}
          isOwed={isOwed(sitting)}
          mayHaveNone={view.joint.method === 'sequence'}
          onClose={() => {
            setDialog(null);
          }}
          onChoose={(way: Way | null) => {
            setDialog(null);
            void now.discard().then(() => {
              now.sitDown({ ...seat, way });
            });
          }}
        />
      ) : null}
      {dialog === 'pin' ? (
        <PinDialog
          people={[{ id: seat.worker, name: nameOf(view, seat.worker) }]}
          default={seat.worker}
          act="Sign final"
          says={`Final of ${jointWords(view)}${tool === '' ? '' : `, with ${tool}`}.${fittedWords(view.hardware, sitting.hardware)}`}
          onClose={() => {
            setDialog(null);
          }}
          onPin={(signer) =>
            desk.signSitting(
              `Signed final by ${nameOf(view, signer.person)}`,
              {
                type: 'final-joint',
                car: view.car.id,
                joint: view.joint.key,
                cycle: view.joint.cycle,
                ...evidenceOf(bench, sitting),
                ...desk.shots.claimed,
                ...fittedClaims(view.hardware, sitting.hardware),
              },
              { signer },
            )
          }
        />
      ) : null}
    </>
  );
}

const overAsk = ({ view, bench, now }: Desk) =>
  asksOf(view.joint, bench.tool?.kind ?? null).find((ask) => isOver(now.sitting, ask)) ?? null;

/** Why it can't be signed yet; empty where it can. */
const whatIsLeft = (desk: Desk): string => {
  const { view, bench, now, at } = desk;
  const { sitting, seat } = now;
  if (at.isSure === false) return SAY_WHICH_CAR;
  if (seat.worker === '') return 'choose whose hands these are';
  const asks = asksOf(view.joint, bench.tool?.kind ?? null);
  if (asks.length === 0 && !isByHand(view.joint)) return 'choose a tool first';
  const open = asks.filter((ask) => !isSettled(bench, sitting, ask) && !isOver(sitting, ask));
  const over = sitting.over.map(({ fastener }) => fastener);
  const words = leftWords(open, over, view.joint);
  if (words !== '') return words;
  return judgeAll(bench, sitting).length === 0 ? photosLeft(desk) : 'the tool can’t be used now';
};

/** Whom to call, and if nobody, why not. */
export const verifiers = ({ view, now }: Desk): { readonly names: string; readonly all: string } => {
  const others = view.people.filter(({ id }) => id !== now.seat.worker);
  const may = others.filter(({ whyNotVerifyAfter }) => whyNotVerifyAfter === null);
  return {
    names: orWords(may.map(({ name }) => name)),
    all: others.map(({ name, whyNotVerifyAfter }) => `${name} ${whyNotVerifyAfter ?? ''}`).join('; '),
  };
};
