'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { isBegun } from './model/sitting';
import { nameOf } from './use-desk';
import type { Desk } from './use-desk';

/** Whose hands: the readings are theirs, and only their PIN signs them. */
export function Worker({ desk }: { readonly desk: Desk }) {
  const { view, now, present } = desk;
  const [isOpen, setOpen] = useState(false);
  const { worker } = now.seat;
  const hasDraft = (person: string): boolean =>
    person !== present && now.others.some(({ key, body }) => key.person === person && isBegun(body));
  const whyNot = (person: Desk['view']['people'][number]): string | null =>
    person.whyNotSign ?? (hasDraft(person.id) ? 'has a draft here, and signs in to go on with it' : null);
  const may = view.people.filter((person) => whyNot(person) === null);
  const mayNot = view.people.filter((person) => whyNot(person) !== null);
  return (
    <div className="so-worker">
      <span className="small">
        <b>{worker === '' ? 'Nobody chosen' : nameOf(view, worker)}</b>
        <br />
        <span className="dim">
          {view.joint.who === null ? 'does it and signs' : `holds “${view.joint.who}”, does it and signs`}
        </span>
      </span>
      <button
        type="button"
        className="so-link"
        onClick={() => {
          setOpen(true);
        }}
      >
        {worker === '' ? 'Choose' : 'Change'}
        <span className="vh"> who does it</span>
      </button>
      {isOpen ? (
        <Dialog
          open
          labelledBy="so-worker"
          className="so-dialog"
          onClose={() => {
            setOpen(false);
          }}
        >
          <header>
            <h2 id="so-worker">Whose hands?</h2>
            <Button
              kind="quiet"
              onClick={() => {
                setOpen(false);
              }}
            >
              Close
            </Button>
          </header>
          <ul className="so-toollist">
            {may.map(({ id, name }) => (
              <li key={id}>
                <button
                  type="button"
                  className={id === worker ? 'so-way on' : 'so-way'}
                  aria-pressed={id === worker}
                  onClick={() => {
                    setOpen(false);
                    if (id !== worker) now.sitDown({ ...now.seat, worker: id });
                  }}
                >
                  <i aria-hidden="true" />
                  <b>{name}</b>
                </button>
              </li>
            ))}
            {mayNot.map((person) => (
              <li key={person.id} className="so-barred">
                <span />
                <span>
                  <b>{person.name}</b>
                  <span className="small">{whyNot(person)}</span>
                </span>
              </li>
            ))}
          </ul>
        </Dialog>
      ) : null}
    </div>
  );
}
