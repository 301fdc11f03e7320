'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import { AnswerLines } from './answer-lines';
import { nextCode } from './short-name';
import { useSending } from './use-sending';

const EMPTY = { id: null as string | null, name: '', extension: '', unit: 'mm' as 'mm' | 'in', angle: '0' };

/** A crow’s-foot or extension: how far it puts the fastener out, and at which angle. It changes the setting. */
export function AddAdapter({ taken }: { readonly taken: readonly string[] }) {
  const [draft, setDraft] = useState(EMPTY);
  const [added, setAdded] = useState('');
  const sending = useSending();
  const id = draft.id ?? nextCode('A', taken);
  const set = (part: Partial<typeof EMPTY>): void => setDraft({ ...draft, ...part });

  const add = (): Promise<void> =>
    sending.send(
      {
        type: 'add-adapter',
        adapter: id,
        name: draft.name.trim(),
        extension: draft.extension.trim(),
        unit: draft.unit,
        angle: Number(draft.angle),
      },
      `${id} is on the wall.`,
      () => {
        setAdded(`${id} ${draft.name}`);
        setDraft(EMPTY);
      },
    );

  return (
    <form
      className="sheet form"
      aria-labelledby="add-adapter"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <header>
        <h2 id="add-adapter">Add an adapter</h2>
        <span className="dim">crow’s-foot or extension</span>
      </header>
      <div className="body">
        <div className="two">
          <Field
            label="Code"
            value={id}
            onChange={(event) => set({ id: event.target.value })}
            error={sending.faultOf('adapter')}
            maxLength={40}
            autoComplete="off"
            required
          />
          <Field
            label="Name"
            value={draft.name}
            onChange={(event) => set({ name: event.target.value })}
            error={sending.faultOf('name')}
            maxLength={100}
            autoComplete="off"
            required
          />
        </div>
        <div className="three">
          <Field
            label="Puts it out by"
            hint="from the square drive to the fastener"
            value={draft.extension}
            onChange={(event) => set({ extension: event.target.value })}
            error={sending.faultOf('extension')}
            inputMode="decimal"
            pattern="\s*\d+(\.\d+)?\s*"
            title="a number, like 45"
            required
          />
          <SelectField
            label="Unit"
            hint="of that length"
            value={draft.unit}
            onChange={(event) => set({ unit: event.target.value === 'in' ? 'in' : 'mm' })}
          >
            <option>mm</option>
            <option>in</option>
          </SelectField>
          <Field
            label="Angle, °"
            hint="0 in line, 90 across: adds nothing"
            type="number"
            min={0}
            max={180}
            step="any"
            value={draft.angle}
            onChange={(event) => set({ angle: event.target.value })}
            error={sending.faultOf('angle')}
            required
          />
        </div>
        <AnswerLines sending={sending} done={`${added} is on the wall.`} />
        <div className="acts">
          <Button kind="main" type="submit" held={sending.isBusy}>
            Add the adapter
          </Button>
        </div>
      </div>
    </form>
  );
}
