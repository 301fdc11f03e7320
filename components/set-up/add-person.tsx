'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { PeopleView } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { Checks } from './checks';
import { HeldFields, heldOf } from './held-fields';
import type { HeldDraft } from './held-fields';
import { LinkDialog } from './link-dialog';
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
  held: [] as readonly HeldDraft[],
};

/** Somebody new: name, roles, qualifications. Their PIN they set themselves, from a link. */
export function AddPerson({ view, mayAddOwner }: AddPersonProps) {
  const [draft, setDraft] = useState(NOBODY);
  const [added, setAdded] = useState({ id: '', name: '' });
  const [isLinking, setLinking] = useState(false);
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
        qualifications: draft.held.map(heldOf),
      },
      `${draft.name} is on the books.`,
      () => {
        setAdded({ id, name: draft.name });
        setDraft(NOBODY);
      },
    );

  return (
    <>
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
            onChange={(chosen) =>
              setDraft({ ...draft, roles: roles.filter((role) => chosen.includes(role)) })
            }
          />
          <HeldFields keys={view.keys} held={draft.held} onChange={(held) => setDraft({ ...draft, held })} />
          <AnswerLines
            sending={sending}
            done={`${added.name} is on the books. Make a link for them: they set their own PIN.`}
          />
          <div className="acts">
            <Button kind="main" type="submit" held={sending.isBusy || draft.roles.length === 0}>
              {draft.roles.length === 0 ? 'Choose a role first' : 'Add'}
            </Button>
            {sending.answer?.outcome === 'accepted' ? (
              <Button onClick={() => setLinking(true)}>Make a link for {added.name}</Button>
            ) : null}
          </div>
        </div>
      </form>
      {isLinking ? <LinkDialog person={added} onClose={() => setLinking(false)} /> : null}
    </>
  );
}
