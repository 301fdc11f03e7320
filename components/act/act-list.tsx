'use client';

import { useState } from 'react';
import type { ActRef, Desk } from '@/lib/wire/views/desk';
import { ActForm } from './act-form';
import { useDesk } from './desk-context';
import { formFor, hasForm } from './form-table';

interface ActListProps {
  readonly acts: readonly ActRef[];
  /** The job that these belong to, where it can be given to somebody. */
  readonly job?: string | null;
}

/** All that may be claimed about one thing: the first stands open, the others one press away. */
export function ActList({ acts, job = null }: ActListProps) {
  const { desk } = useDesk();
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());
  const [first, ...others] = acts.filter((act) => hasForm(act) && !isNothingFor(act, desk));
  const give = giving(desk, job);
  const more = give === null ? others : [...others, give];
  const keyOf = ({ type, key }: ActRef): string => `${type} ${key}`;
  const flip = (key: string): void =>
    setOpened((before) => {
      const next = new Set(before);
      if (!next.delete(key)) next.add(key);
      return next;
    });
  return (
    <>
      {first === undefined ? null : <ActForm key={keyOf(first)} act={first} />}
      {more.length === 0 ? null : (
        <p className="oracts">
          <span className="label">{first === undefined ? 'May be done' : 'Or'}</span>
          {more.map((act) => (
            <button
              key={keyOf(act)}
              type="button"
              className="btn"
              aria-expanded={opened.has(keyOf(act))}
              onClick={() => flip(keyOf(act))}
            >
              {formFor(act, desk, {})?.title}
            </button>
          ))}
        </p>
      )}
      {more
        .filter((act) => opened.has(keyOf(act)))
        .map((act) => (
          <ActForm key={keyOf(act)} act={act} />
        ))}
    </>
  );
}

/** Who is alone on work has nobody to take it over from; whoever relieves them gives the PIN at their own name. */
const isNothingFor = ({ type, key, why }: ActRef, { me, whys, operations }: Desk): boolean =>
  type === 'take-over-operation' &&
  whys[why]?.[me.id] !== undefined &&
  operations[key]?.present.includes(me.id) === true;

/** Whom a job is given to is the lead's; nobody else is asked. */
const giving = (desk: ReturnType<typeof useDesk>['desk'], job: string | null): ActRef | null => {
  const assign = desk.always.find(({ type }) => type === 'assign');
  return job === null || assign === undefined || desk.whys[assign.why]?.[desk.me.id] !== undefined
    ? null
    : { ...assign, kind: 'operation', key: job };
};
