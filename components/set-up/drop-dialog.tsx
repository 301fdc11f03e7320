'use client';

import { useState } from 'react';
import { Field, SelectField } from '@/components/ui/field';
import { SUSPECT_REASONS } from '@/lib/domain/base/vocabulary';
import type { SuspectReason } from '@/lib/domain/base/vocabulary';
import { SUSPECT_WORDS } from '@/lib/wire/views/suspect-words';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { useSending } from './use-sending';

interface DropDialogProps {
  readonly tool: { readonly id: string; readonly name: string };
  readonly onClose: () => void;
}

/** Anybody says it, and the tool is suspect at once: nobody signs with it until it was tested. */
export function DropDialog({ tool, onClose }: DropDialogProps) {
  const sending = useSending();
  const [reason, setReason] = useState<SuspectReason>('dropped');
  const [from, setFrom] = useState('');

  const say = (): Promise<void> =>
    sending.send(
      {
        type: 'suspect-tool',
        tool: tool.id,
        reason,
        ...(from === '' ? {} : { from: new Date(from).toISOString() }),
      },
      `${tool.id} is suspect. Nobody signs with it until it was tested.`,
      onClose,
    );

  return (
    <AskDialog
      title={`${tool.id} ${tool.name}: not to be believed`}
      act="Make it suspect"
      kind="stop"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => void say()}
      onClose={onClose}
    >
      <SelectField
        label="What happened"
        value={reason}
        onChange={(event) => {
          const found = SUSPECT_REASONS.find((each) => each === event.target.value);
          if (found !== undefined) setReason(found);
        }}
      >
        {SUSPECT_REASONS.map((each) => (
          <option key={each} value={each}>
            {SUSPECT_WORDS[each]}
          </option>
        ))}
      </SelectField>
      <Field
        label="Since when"
        hint="empty: from now. Every final made with it from then on is in doubt."
        type="datetime-local"
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      />
    </AskDialog>
  );
}
