'use client';

import { useState } from 'react';
import { useIsOneHand } from '@/components/act/device';
import { PinDialog } from '@/components/act/pin-dialog';
import type { PinPerson } from '@/components/act/pin-dialog';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { TextField } from '@/components/ui/field';

interface LotActsProps {
  readonly lot: string;
  readonly isKeptApart: boolean;
  /** In how many joints it stands now. */
  readonly joints: number;
  /** Who may clear it. */
  readonly signers: readonly PinPerson[];
  readonly me: string;
}

/** Kept apart by anybody, at once; cleared by a lead who signs. */
export function LotActs({ lot, isKeptApart, joints, signers, me }: LotActsProps) {
  const [isOpen, setOpen] = useState(false);
  const close = (): void => setOpen(false);
  if (isKeptApart)
    return (
      <>
        <Button onClick={() => setOpen(true)}>Clear the lot, with a reason</Button>
        {isOpen ? <ClearDialog lot={lot} signers={signers} me={me} onClose={close} /> : null}
      </>
    );
  return (
    <>
      <Button kind="stop" onClick={() => setOpen(true)}>
        Keep apart
      </Button>
      {isOpen ? <ApartDialog lot={lot} joints={joints} onClose={close} /> : null}
    </>
  );
}

interface ApartDialogProps extends Pick<LotActsProps, 'lot' | 'joints'> {
  readonly onClose: () => void;
}

function ApartDialog({ lot, joints, onClose }: ApartDialogProps) {
  const sending = useSending();
  const [reason, setReason] = useState('');
  const isEmpty = reason.trim() === '';
  return (
    <AskDialog
      title={`Keep lot ${lot} apart`}
      act={isEmpty ? 'Write the reason first' : 'Keep it apart'}
      kind="stop"
      isBusy={sending.isBusy || isEmpty}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'quarantine-lot', lot, reason: reason.trim() },
          `Lot ${lot} is kept apart. None of it is fitted.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <p>
        {joints === 0
          ? 'None of it is in a car. From now on none of it may be fitted.'
          : `It is in ${joints === 1 ? 'one joint' : `${String(joints)} joints`}: ${joints === 1 ? 'that one is' : 'all of them are'} in doubt at once, on every car, until renewed or until a lead clears the lot.`}
      </p>
      <TextField
        label="What is wrong with it"
        value={reason}
        onChange={(event) => setReason(event.target.value)}
        error={sending.faultOf('reason')}
        required
      />
    </AskDialog>
  );
}

interface ClearDialogProps extends Pick<LotActsProps, 'lot' | 'signers' | 'me'> {
  readonly onClose: () => void;
}

function ClearDialog({ lot, signers, me, onClose }: ClearDialogProps) {
  const sending = useSending();
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const isOneHand = useIsOneHand();
  const isEmpty = reason.trim() === '';
  if (isSigning)
    return (
      <PinDialog
        people={isOneHand ? signers.filter(({ id }) => id === me) : signers}
        default={me}
        says={`Lot ${lot} may be used again: ${reason.trim()}`}
        act="Clear"
        onPin={(signer) =>
          sending.sign(
            { type: 'clear-lot', lot, reason: reason.trim() },
            signer,
            `Lot ${lot} may be used again.`,
            onClose,
          )
        }
        onClose={() => setSigning(false)}
      />
    );
  return (
    <AskDialog
      title={`Clear lot ${lot}`}
      act={isEmpty ? 'Write the reason first' : 'On to the PIN'}
      isBusy={isEmpty}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => setSigning(true)}
      onClose={onClose}
    >
      <p>Every joint that it is in counts again, on every car, as it stood before.</p>
      <TextField
        label="Why it is good after all"
        value={reason}
        onChange={(event) => setReason(event.target.value)}
        required
      />
    </AskDialog>
  );
}
