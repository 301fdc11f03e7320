'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { HardwareView } from '@/lib/wire/views/sign-off';

interface Choice {
  readonly claim: FittedClaim | null;
  readonly name: string;
  readonly says: string;
  readonly whyNot: string | null;
}

/** What goes in otherwise than the plan says by itself: from a named lot, or something that may stand in. */
const choicesOf = (line: HardwareView): readonly Choice[] => {
  const fasteners = line.places.flatMap(({ fastener, state }) =>
    state === 'in' || fastener === null ? [] : [fastener],
  );
  const where = line.perFastener ? { fasteners } : {};
  return [
    { claim: null, name: line.name, says: 'as planned, lot not said', whyNot: null },
    ...line.lots.map(({ id, says, whyNot }): Choice => ({
      claim: { item: line.item, lot: id, ...where },
      name: line.name,
      says: `lot ${says}`,
      whyNot,
    })),
    ...line.substitutes.flatMap(({ item, name, condition, asksLead, lots }): Choice[] => {
      const on = [condition, asksLead ? 'a lead signs' : null].flatMap((part) => part ?? []).join('; ');
      const claim: FittedClaim = { item, insteadOf: line.item, ...where };
      return [
        { claim, name, says: `instead; ${on}`, whyNot: null },
        ...lots.map(({ id, says: from, whyNot }) => ({
          claim: { ...claim, lot: id },
          name,
          says: `instead, lot ${from}; ${on}`,
          whyNot,
        })),
      ];
    }),
  ];
};

export function HardwareDialog(props: {
  readonly line: HardwareView;
  readonly claim: FittedClaim | null;
  readonly onChoose: (claim: FittedClaim | null) => void;
  readonly onClose: () => void;
}) {
  const { line, onChoose, onClose } = props;
  const [chosen, setChosen] = useState(JSON.stringify(props.claim));
  const choices = choicesOf(line);
  return (
    <Dialog open onClose={onClose} labelledBy="so-hardware" className="so-dialog">
      <header>
        <h2 id="so-hardware">What goes in</h2>
        <Button kind="quiet" onClick={onClose}>
          Close
        </Button>
      </header>
      <ul className="so-toollist">
        {choices.map(({ claim, name, says, whyNot }) => {
          const id = JSON.stringify(claim);
          return whyNot === null ? (
            <li key={id}>
              <button
                type="button"
                className={chosen === id ? 'so-way on' : 'so-way'}
                aria-pressed={chosen === id}
                onClick={() => {
                  setChosen(id);
                  onChoose(claim);
                }}
              >
                <i aria-hidden="true" />
                <span>
                  <b>{name}</b>
                  <br />
                  <span className="small dim">{says}</span>
                </span>
              </button>
            </li>
          ) : (
            <li key={id} className="so-barred">
              <span />
              <span>
                <b>
                  {name}, {says}
                </b>
                <span className="small">{whyNot}</span>
              </span>
            </li>
          );
        })}
      </ul>
    </Dialog>
  );
}
