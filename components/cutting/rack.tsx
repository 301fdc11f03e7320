'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { TextField } from '@/components/ui/field';
import type { CutItem } from '@/lib/wire/views/cutting';
import { withUnit } from './length';

/** Rests of one item: what the plan may begin with, and who last looked. */
export function Rack({ item: { key, name, rack } }: { readonly item: CutItem }) {
  const [isOpen, setOpen] = useState(false);
  const [typed, setTyped] = useState(rack.lengths);
  const sending = useSending();
  return (
    <div className="rests">
      <span className="small dim">{rack.says}</span>
      <Button
        onClick={() => {
          setTyped(rack.lengths);
          setOpen(true);
        }}
      >
        Count the rests<span className="vh"> of {name}</span>
      </Button>
      {isOpen ? (
        <AskDialog
          title={`Rests of ${name} in the rack`}
          act="That is all there is"
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="Counted." />}
          onAct={() =>
            void sending.send(
              { type: 'count-remnants', item: key, lengths: lengthsOf(typed) },
              `The rests of ${name} are counted.`,
              () => setOpen(false),
            )
          }
          onClose={() => setOpen(false)}
        >
          <TextField
            label="Lengths"
            hint="in millimetres, a comma between them; nothing where the rack is empty of it"
            value={typed}
            data-first
            onChange={(event) => setTyped(event.target.value)}
          />
        </AskDialog>
      ) : null}
    </div>
  );
}

/** `1240, 640` or one on a line. */
const lengthsOf = (typed: string): readonly string[] =>
  typed
    .split(/[,;\n]/u)
    .map(withUnit)
    .filter((each) => each !== '');
