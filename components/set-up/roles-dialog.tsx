'use client';

import { useState } from 'react';
import { ROLES } from '@/lib/domain/base/vocabulary';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { Checks } from './checks';
import { useSending } from './use-sending';

interface RolesDialogProps {
  readonly person: SetUpPerson;
  readonly onClose: () => void;
}

const GIVEN = ['technician', 'lead', 'owner'] as const;

/** Other roles from now on: an owner's to give. What they signed before keeps the roles of then. */
export function RolesDialog({ person: { id, name, roles: was, isOneself }, onClose }: RolesDialogProps) {
  const [chosen, setChosen] = useState<readonly string[]>(was);
  const sending = useSending();
  const roles = ROLES.filter((role) => chosen.includes(role));
  const isSame = roles.length === was.length && roles.every((role) => was.includes(role));
  return (
    <AskDialog
      title={`Roles of ${name}`}
      act={
        roles.length === 0 ? 'Choose a role first' : isSame ? 'Choose other roles first' : 'Change the roles'
      }
      isBusy={sending.isBusy || isSame || roles.length === 0}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'change-roles', person: id, roles },
          `${name} is ${roles.join(' and ')} from now on.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Checks legend="Roles" all={GIVEN} chosen={chosen} onChange={setChosen} />
      <p className="small">
        {isOneself
          ? 'It counts at once. What you signed keeps the roles you had then.'
          : `It counts at once, and ${name} signs in again: an owner or a lead by password, a technician by PIN. What ${name} signed keeps the roles of then.`}
      </p>
    </AskDialog>
  );
}
