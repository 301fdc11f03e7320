'use client';

import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Unbroken } from '@/components/ui/unbroken';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { freshAt, lotWords } from '@/lib/wire/views/lot-words';
import type { HardwareView, LotChoice } from '@/lib/wire/views/sign-off';

interface Choice {
  /** Null = as it is proposed, or as the plan says by itself. */
  readonly claim: FittedClaim | null;
  readonly name: string;
  readonly says: string;
  readonly whyNot: string | null;
}

/** What goes in: from the lot that is proposed, from another, from one that nobody names, or something that may stand in. */
const choicesOf = (line: HardwareView): readonly Choice[] => {
  const fresh = freshAt(line) ?? [];
  // Where the old ones may go in again, whoever names a lot says that new ones do.
  const open = line.places.flatMap(({ fastener, state }) =>
    state === 'in' || fastener === null ? [] : [fastener],
  );
  const fasteners = fresh.length === 0 ? open : fresh;
  const where = line.perFastener ? { fasteners } : {};
  const [proposed, ...more] = line.proposed;
  const first = more.length === 0 ? proposed?.lot : undefined;
  const lotSays = ({ id, says }: LotChoice): string => `lot ${id}, ${says}`;
  const own = line.lots.find(({ id }) => id === first);
  return [
    {
      claim: null,
      name: line.name,
      says: proposed === undefined ? 'as planned, lot not said' : firstSays(line, own),
      whyNot: null,
    },
    ...line.lots
      .filter(({ id }) => id !== first)
      .map((lot): Choice => ({
        claim: { item: line.item, lot: lot.id, ...where },
        name: line.name,
        says: lotSays(lot),
        whyNot: lot.whyNot,
      })),
    ...(proposed === undefined
      ? []
      : [{ claim: { item: line.item, ...where }, name: line.name, says: 'lot not said', whyNot: null }]),
    ...line.substitutes.flatMap(({ item, name, condition, asksLead, lots }): Choice[] => {
      const on = [condition, asksLead ? 'a lead signs' : null].flatMap((part) => part ?? []).join('; ');
      const claim: FittedClaim = { item, insteadOf: line.item, ...where };
      return [
        { claim, name, says: ['instead', on].filter((part) => part !== '').join('; '), whyNot: null },
        ...lots.map((lot) => ({
          claim: { ...claim, lot: lot.id },
          name,
          says: [`instead, ${lotSays(lot)}`, on].filter((part) => part !== '').join('; '),
          whyNot: lot.whyNot,
        })),
      ];
    }),
  ];
};

const firstSays = (line: HardwareView, own: LotChoice | undefined): string =>
  [lotWords(line, line.proposed), own?.says ?? '', 'to be taken first']
    .filter((each) => each !== '')
    .join(', ');

export function HardwareDialog(props: {
  readonly line: HardwareView;
  readonly claim: FittedClaim | null;
  readonly onChoose: (claim: FittedClaim | null) => void;
  readonly onClose: () => void;
}) {
  const { line, onChoose, onClose } = props;
  const chosen = JSON.stringify(props.claim);
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
                  onChoose(claim);
                  onClose();
                }}
              >
                <i aria-hidden="true" />
                <span>
                  <b>{name}</b>
                  <br />
                  <span className="small dim">
                    <Unbroken says={says} />
                  </span>
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
