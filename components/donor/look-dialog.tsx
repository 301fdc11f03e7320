'use client';

import { useState } from 'react';
import type { ReactNode } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';

interface LookDialogProps {
  readonly car: string;
  readonly title: ReactNode;
  readonly part: { readonly key: string; readonly name: string; readonly lookedAt: string };
  /** What to do where it is not good. */
  readonly otherwise: ReactNode;
  readonly onClose: () => void;
}

/** The look after which a part counts as here: graded reuse, or back from outside work. */
export function LookDialog({ car, title, part, otherwise, onClose }: LookDialogProps) {
  const sending = useSending();
  const [looked, setLooked] = useState('');
  return (
    <AskDialog
      title={title}
      act="Here and good"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="It counts as here." />}
      onAct={() =>
        void sending.send(
          { type: 'receive-part', car, part: part.key, looked: looked.trim() },
          `${part.name} is here and good.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="What was looked at or measured"
        hint={part.lookedAt === '' ? undefined : `the plan says: ${part.lookedAt}`}
        value={looked}
        maxLength={300}
        data-first
        autoComplete="off"
        onChange={(event) => setLooked(event.target.value)}
      />
      <p className="small dim">It is not good? {otherwise}</p>
    </AskDialog>
  );
}
