'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { PeopleView } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { Checks } from './checks';
import { shortName } from './short-name';
import { useSending } from './use-sending';

interface AddPersonProps {
  readonly view: PeopleView;
  readonly mayAddOwner: boolean;
}

const NOBODY = {
  name: '',
  id: null as string | null,
  roles: ['technician'] as readonly Role[],
  keys: [] as readonly string[],
  more: '',
};

/** Somebody new: name, roles, qualifications. Their PIN they set themselves, from a link. */
export function AddPerson({ view, mayAddOwner }: AddPersonProps) {
  const [draft, setDraft] = useState(NOBODY);
  const [added, setAdded] = useState('');
  const sending = useSending();
  const id = draft.id ?? shortName(draft.name, view.takenIds);
  const roles: readonly Role[] = mayAddOwner ? ['technician', 'lead', 'owner'] : ['technician', 'lead'];

  const add = (): Promise<void> =>
    sending.send(
      {
        type: 'add-person',
        person: id,
        name: draft.name.trim(),
        roles: draft.roles,
        qualifications: [...draft.keys, ...wordsIn(draft.more)].map((key) => ({ key })),
      },
      `${draft.name} is on the books.`,
      () => {
        setAdded(draft.name);
        setDraft(NOBODY);
      },
    );

  return (
    <form
      className="sheet form"
      aria-labelledby="add-person"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <header>
        <h2 id="add-person">Add a person</h2>
      </header>
      <div className="body">
        <div className="two">
          <Field
            label="Name"
            value={draft.name}
            onChange={(event) => setDraft({ ...draft, name: event.target.value })}
            error={sending.faultOf('name')}
            maxLength={100}
            autoComplete="off"
            required
          />
          <Field
            label="In the records"
            hint="short, and kept for ever"
            value={id}
            onChange={(event) => setDraft({ ...draft, id: event.target.value })}
            error={sending.faultOf('person')}
            maxLength={40}
            autoComplete="off"
            autoCapitalize="none"
            required
          />
        </div>
        <Checks
          legend="Roles"
          all={roles}
          chosen={draft.roles}
          onChange={(chosen) => setDraft({ ...draft, roles: roles.filter((role) => chosen.includes(role)) })}
        />
        <Checks
          legend="Holds without an end"
          all={view.keys}
          chosen={draft.keys}
          onChange={(keys) => setDraft({ ...draft, keys })}
        />
        <Field
          label="Other qualifications"
          hint="words as the plan writes them, with commas between"
          value={draft.more}
          onChange={(event) => setDraft({ ...draft, more: event.target.value })}
          maxLength={500}
          autoComplete="off"
        />
        <AnswerLines
          sending={sending}
          done={`${added} is on the books. Make a link for them above: they set their own PIN.`}
        />
        <div className="acts">
          <Button kind="main" type="submit" held={sending.isBusy || draft.roles.length === 0}>
            {draft.roles.length === 0 ? 'Choose a role first' : 'Add'}
          </Button>
        </div>
      </div>
    </form>
  );
}

const wordsIn = (text: string): readonly string[] =>
  text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
