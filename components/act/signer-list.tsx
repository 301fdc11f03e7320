import { useId, useState } from 'react';

export interface PinPerson {
  readonly id: string;
  readonly name: string;
  /** Why this person would be refused; absent = may. */
  readonly whyNot?: string;
}

interface SignerListProps {
  readonly people: readonly PinPerson[];
  readonly chosen: string;
  readonly onChoose: (person: string) => void;
}

/** Who signs. Those who may come first; beside the others stands why they may not. On a phone it folds to the chosen one. */
export function SignerList({ people, chosen, onChoose }: SignerListProps) {
  const name = useId();
  const [unfolded, setUnfolded] = useState(chosen === '');
  const may = people.filter(({ whyNot }) => whyNot === undefined);
  const mayNot = people.filter(({ whyNot }) => whyNot !== undefined);
  const who = people.find(({ id }) => id === chosen);
  return (
    <fieldset className="signers" data-folded={!unfolded || undefined}>
      <legend className="label">Who signs</legend>
      <p className="signers-fold">
        <b>{who?.name}</b>
        <button
          type="button"
          className="btn quiet"
          onClick={() => {
            setUnfolded(true);
          }}
        >
          Somebody else
        </button>
      </p>
      <ul>
        {may.map((person) => (
          <li key={person.id}>
            <label className={person.id === chosen ? 'choice on' : 'choice'}>
              <input
                type="radio"
                name={name}
                value={person.id}
                checked={person.id === chosen}
                onChange={() => {
                  onChoose(person.id);
                }}
              />
              <b className="nm">{person.name}</b>
            </label>
          </li>
        ))}
        {mayNot.map((person) => (
          <li key={person.id} className="choice barred">
            <i aria-hidden="true" />
            <span>
              <b className="nm">{person.name}</b>
              <span className="small dim"> may not. {person.whyNot}</span>
            </span>
          </li>
        ))}
      </ul>
      {may.length === 0 ? <p className="small">Nobody in the shop may sign this now.</p> : null}
    </fieldset>
  );
}
