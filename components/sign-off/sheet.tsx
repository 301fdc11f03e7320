'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import type { MouseEvent } from 'react';
import { announce } from '@/components/ui/live-region';
import type { HardwareView, SignOffView } from '@/lib/wire/views/sign-off';
import { FinalWork } from './final-work';
import { HardwareDialog } from './hardware-dialog';
import { CarBar } from './car-bar';
import { Band, Head, carHref } from './head';
import { lineOf } from './model/fitted';
import { headStates } from './model/head-states';
import { countOf, isBegun, isOwed } from './model/sitting';
import { Others } from './others';
import { DraftNotes, SigningPanel } from './panels';
import { PendingPanel, timeOf } from './pending-panel';
import { RecheckWork } from './recheck-work';
import { RenewWork, RestWork } from './rest-work';
import { goesWith, PhotoNote, SheetPhotos } from './sheet-photos';
import { Side } from './side';
import { LeaveDialog, OpenDialog } from './small-dialogs';
import { SnugWork } from './snug-work';
import { DisturbedDialog } from './trouble-dialogs';
import { useDesk } from './use-desk';
import type { Desk } from './use-desk';
import { VerifyWork } from './verify-work';
import type { Work } from './work';
import './sign-off.css';

type Dialog =
  | { readonly is: 'leave' }
  | { readonly is: 'disturbed' }
  | { readonly is: 'opened'; readonly fasteners: readonly number[]; readonly reason: string }
  | { readonly is: 'hardware'; readonly line: HardwareView };

interface SheetProps {
  readonly view: SignOffView;
  /** Who is signed in on this device. */
  readonly present: string;
}

/** The sign-off sheet of one joint, open for whatever the joint asks next. */
export function Sheet({ view, present }: SheetProps) {
  const desk = useDesk(view, present);
  const [chosen, setChosen] = useState<SignOffView['next'] | null>(null);
  const [dialog, setDialog] = useState<Dialog | null>(null);
  const router = useRouter();
  const { now } = desk;
  const { sitting } = now;
  useAnsweredMeanwhile(desk);
  // Another level or cycle asks for something else than what was chosen before.
  useEffect(() => {
    setChosen(null);
  }, [view.joint.level, view.joint.cycle, view.next]);

  const next = chosen ?? view.next;
  // While the readings of this sitting are on the sheet, what is over is shown beside them.
  const mode = next === 'renew' && isBegun(sitting) ? 'final' : next;
  const close = (): void => {
    setDialog(null);
  };
  const on = { car: view.car.id, joint: view.joint.key, cycle: view.joint.cycle };
  const work: Work = {
    desk,
    notes: {
      above: (
        <DraftNotes
          isKept={now.isKept}
          broughtBack={now.broughtBack === null ? null : timeOf(now.broughtBack)}
          mayDiscard={!isOwed(sitting) && sitting.over.length === 0}
          onDiscard={() => void now.discard()}
          others={now.others}
          view={view}
          worker={now.seat.worker}
          onDiscardOther={(draft) => void now.discardOther(draft)}
        />
      ),
      below: (
        <>
          <PendingPanel desk={desk} />
          <SigningPanel state={desk.signing.state} onForget={desk.signing.forget} />
        </>
      ),
    },
    onOpened: (fasteners, reason) => {
      setDialog({ is: 'opened', fasteners, reason });
    },
    photoNote: <PhotoNote shots={desk.shots} />,
    onOther: <Others view={view} mode={mode} onChoose={setChosen} />,
  };
  // By the rules; an act that was chosen besides asks by itself.
  const isAsked = view.isAsked || chosen !== null;
  const fits = mode === 'snug' || mode === 'final';
  return (
    <>
      <Band colour={view.car.colour} />
      <div className="so-in">
        <CarBar car={view.car} at={desk.at} isAsked={isAsked} />
        <Head
          view={view}
          onLeave={(event: MouseEvent) => {
            if (!isBegun(sitting) || sitting.pending !== null) return;
            event.preventDefault();
            setDialog({ is: 'leave' });
          }}
        />
        <div className="so-cols">
          <Side
            view={view}
            showsNeeds={mode === 'snug'}
            end={mode === 'final' && view.joint.passes > 1 ? passWords(desk) : ''}
            stateOf={headStates(desk, mode)}
            claims={sitting.hardware}
            onHardware={
              fits
                ? (line) => {
                    setDialog({ is: 'hardware', line });
                  }
                : undefined
            }
            onDisturbed={() => {
              setDialog({ is: 'disturbed' });
            }}
            onOpened={() => {
              work.onOpened([], '');
            }}
          >
            {isAsked || view.standing !== null ? <SheetPhotos desk={desk} /> : null}
          </Side>
          <Works mode={mode} work={work} />
        </div>
        <p className="so-foot small dim">
          The maker’s data, local codes and licensed practice decide; this records and reminds. Plan{' '}
          {view.car.model} {view.car.revision}
          {view.joint.source === null ? '' : `, value: ${view.joint.source}`}.
        </p>
      </div>
      {dialog?.is === 'leave' ? (
        <LeaveDialog
          begun={countOf(sitting, view.joint.word)}
          isOwed={isOwed(sitting)}
          onClose={close}
          onLeave={() => {
            void Promise.all([now.discard(), desk.shots.discard()]).then(() => {
              router.push(carHref(view));
            });
          }}
        />
      ) : null}
      {dialog?.is === 'disturbed' ? (
        <DisturbedDialog
          goesWith={goesWith(desk.shots)}
          joint={view.joint}
          onClose={close}
          onReport={(cause, fasteners) => {
            close();
            void desk.say('Reported. The joint is in doubt', {
              type: 'report-disturbed',
              ...on,
              cause,
              fasteners,
              ...desk.shots.claimed,
            });
          }}
        />
      ) : null}
      {dialog?.is === 'opened' ? (
        <OpenDialog
          joint={view.joint}
          preset={dialog.fasteners}
          reason={dialog.reason}
          onClose={close}
          onOpen={(fasteners, reason) => {
            close();
            void desk.say('Opened. A new cycle begins', {
              type: 'open-joint',
              ...on,
              fasteners,
              ...(reason === '' ? {} : { reason }),
            });
          }}
        />
      ) : null}
      {dialog?.is === 'hardware' ? (
        <HardwareDialog
          line={dialog.line}
          claim={sitting.hardware.find((claim) => lineOf(claim) === dialog.line.item) ?? null}
          onClose={close}
          onChoose={(claim) => {
            void now.change((before) => ({
              ...before,
              hardware: [
                ...before.hardware.filter((each) => lineOf(each) !== dialog.line.item),
                ...(claim === null ? [] : [claim]),
              ],
            }));
          }}
        />
      ) : null}
    </>
  );
}

function Works({ mode, work }: { readonly mode: SignOffView['next']; readonly work: Work }) {
  switch (mode) {
    case 'snug':
      return <SnugWork {...work} />;
    case 'final':
      return <FinalWork {...work} />;
    case 'verify':
      return <VerifyWork {...work} />;
    case 'recheck':
      return <RecheckWork {...work} />;
    case 'renew':
      return <RenewWork {...work} />;
    case 'rest':
      return <RestWork {...work} />;
  }
}

const passWords = ({ view, now }: Desk): string => {
  const { passes, order } = view.joint;
  const isDone = (pass: number): boolean =>
    order.every((fastener) => now.sitting.given[`tap:${String(pass)}:${String(fastener)}`] !== undefined);
  let pass = 1;
  while (pass < passes && isDone(pass)) pass += 1;
  return `pass ${String(pass)} of ${String(passes)}`;
};

/** A signing whose answer was lost is found in the record: then there is nothing left to ask. */
const useAnsweredMeanwhile = ({ view, now, shots, signing }: Desk): void => {
  const { pending } = now.sitting;
  const id = pending?.id;
  const isThere = id !== undefined && view.marks.some(({ signature }) => signature === id);
  const { settle, isReady } = now;
  const isAsking = signing.state.is === 'asking';
  const latest = useRef({ pending, shots });
  latest.current = { pending, shots };
  useEffect(() => {
    if (!isReady || !isThere || isAsking) return;
    announce('It was signed: only the answer had been lost.');
    void settle();
    if (latest.current.pending !== null) void latest.current.shots.given(latest.current.pending.claim);
    // Asked once for each pending signing; `settle` is new with every render.
  }, [isReady, isThere, isAsking, settle]);
};
