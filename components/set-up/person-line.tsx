'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { LiftAnswer } from '@/lib/wire/set-up';
import type { PeopleView, SetUpPerson } from '@/lib/wire/views/set-up';
import { ask } from './ask';
import { EndDialog } from './end-dialog';
import { LinkDialog } from './link-dialog';
import { QualifyDialog } from './qualify-dialog';
import { RemoveDialog } from './remove-dialog';
import { RenameDialog } from './rename-dialog';
import { RolesDialog } from './roles-dialog';

interface PersonLineProps {
  readonly person: SetUpPerson;
  readonly view: PeopleView;
}

type Open = 'link' | 'qualify' | 'end' | 'rename' | 'roles' | 'remove' | null;

export function PersonLine({ person, view: { keys, today, yesterday } }: PersonLineProps) {
  const [open, setOpen] = useState<Open>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const router = useRouter();
  const close = (): void => setOpen(null);

  const lift = async (): Promise<void> => {
    const answer = await ask<LiftAnswer>('/api/set-up/rests', { person: person.id });
    setWrong(answer.outcome === 'lifted' ? null : answer.says);
    router.refresh();
  };

  return (
    <li>
      <span className="cellbox" aria-hidden="true">
        {person.initials}
      </span>
      <span className="t">
        <b>{person.name}</b>
        <span className="small dim">
          {person.roles.join(', ')}; the records call them “{person.id}”
        </span>
        <span className="small">
          <Glyph name={person.needsLink ? 'due' : 'passed'} size={18} /> {person.secrets}
          {person.linkUntil === null ? null : `; a link is good until ${person.linkUntil}`}
        </span>
        {person.restsUntil === null ? null : (
          <span className="small">
            <Glyph name="lock" size={18} /> rests until {person.restsUntil} after too many wrong tries
          </span>
        )}
        {wrong === null ? null : (
          <span className="small stop" role="alert">
            {wrong}
          </span>
        )}
      </span>
      <span className="acts">
        {person.restsUntil === null ? null : <Button onClick={() => void lift()}>Lift it</Button>}
        {person.mayLink ? (
          <Button onClick={() => setOpen('link')}>
            Link for {person.needsLink ? 'the first PIN' : 'a new PIN'}
            <span className="vh"> of {person.name}</span>
          </Button>
        ) : null}
        <Button onClick={() => setOpen('qualify')}>
          Qualify<span className="vh"> {person.name}</span>
        </Button>
        {person.held.some(({ mayEnd }) => mayEnd) ? (
          <Button onClick={() => setOpen('end')}>
            End<span className="vh"> a qualification of {person.name}</span>
          </Button>
        ) : null}
        <Button onClick={() => setOpen('rename')}>
          Rename<span className="vh"> {person.name}</span>
        </Button>
        {person.mayChangeRoles ? (
          <Button onClick={() => setOpen('roles')}>
            Roles<span className="vh"> of {person.name}</span>
          </Button>
        ) : null}
        {person.mayRemove ? (
          <Button kind="quiet" onClick={() => setOpen('remove')}>
            Remove<span className="vh"> {person.name}</span>
          </Button>
        ) : null}
      </span>
      {open === 'link' ? <LinkDialog person={person} onClose={close} /> : null}
      {open === 'qualify' ? <QualifyDialog person={person} keys={keys} onClose={close} /> : null}
      {open === 'end' ? (
        <EndDialog person={person} today={today} yesterday={yesterday} onClose={close} />
      ) : null}
      {open === 'rename' ? <RenameDialog person={person} onClose={close} /> : null}
      {open === 'roles' ? <RolesDialog person={person} onClose={close} /> : null}
      {open === 'remove' ? <RemoveDialog person={person} onClose={close} /> : null}
    </li>
  );
}
