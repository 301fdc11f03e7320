import type { PeopleView } from '@/lib/wire/views/set-up';
import { PersonLine } from './person-line';

/** Everybody who works here, and what can be done for each. */
export function PeopleList({ view }: { readonly view: PeopleView }) {
  return (
    <section className="sheet" aria-labelledby="people">
      <header>
        <h2 id="people">Who works here</h2>
        <span className="dim">nobody sees a PIN, not even here</span>
      </header>
      <ul className="lines people">
        {view.people.map((person) => (
          <PersonLine key={person.id} person={person} view={view} />
        ))}
      </ul>
    </section>
  );
}
