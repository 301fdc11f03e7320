import type { SignInPerson } from '@/lib/wire/views/sign-in';

interface TilesProps {
  readonly people: readonly SignInPerson[];
  readonly chosen: string;
  readonly onChoose: (person: string, byPointer: boolean) => void;
  /** Goes along with the link to the desk, so that it leads to the same page. */
  readonly to: string;
}

/** One tile for each name: those of the bench are chosen here, the others lead to the desk. */
export function Tiles({ people, chosen, onChoose, to }: TilesProps) {
  return (
    <fieldset className="tiles">
      <legend className="vh">Your name</legend>
      {people.map((person) =>
        person.comesBy === 'bench' ? (
          <label key={person.id} className="tile">
            <input
              type="radio"
              className="vh"
              name="name"
              value={person.id}
              required
              checked={person.id === chosen}
              // A click that an arrow key made has no place and counts no presses.
              onClick={(event) => onChoose(person.id, event.detail > 0)}
              onChange={() => onChoose(person.id, false)}
            />
            <Face person={person} />
          </label>
        ) : (
          <a key={person.id} className="tile away" href={deskOf(person.id, to)}>
            <Face person={person} />
          </a>
        ),
      )}
    </fieldset>
  );
}

const deskOf = (person: string, to: string): string =>
  `/sign-in?${new URLSearchParams({ at: 'desk', name: person, to }).toString()}`;

function Face({ person }: { readonly person: SignInPerson }) {
  return (
    <>
      <b className="ini" aria-hidden="true">
        {person.initials}
      </b>
      <span>
        <b>{person.name}</b>
        <span className="small dim">
          <span className="vh">, </span>
          {person.says}
        </span>
      </span>
    </>
  );
}
