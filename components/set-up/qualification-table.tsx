import type { PeopleView } from '@/lib/wire/views/set-up';

/** A row for each person, a column for each qualification, and how many hold it: one who does is underlined. */
export function QualificationTable({ view: { people, keys } }: { readonly view: PeopleView }) {
  if (keys.length === 0) return null;
  return (
    <section className="sheet" aria-labelledby="held">
      <header>
        <h2 id="held">Who holds what</h2>
        <span className="dim">with the last day on which it counts</span>
      </header>
      {/* Wider than a phone: it scrolls by itself, with the keyboard too. */}
      <div className="mx-scroll" role="region" aria-labelledby="held" tabIndex={0}>
        <table className="mx">
          <thead>
            <tr>
              <th scope="col">Who</th>
              {keys.map((key) => (
                <th key={key} scope="col" className="v">
                  <span>{key}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {people.map((person) => (
              <tr key={person.id}>
                <th scope="row" className="nm">
                  {person.name}
                </th>
                {keys.map((key) => {
                  const held = person.held.find((each) => each.key === key);
                  return held === undefined ? (
                    <td key={key} className="q no">
                      <span className="vh">does not hold it</span>
                    </td>
                  ) : (
                    <td key={key} className={held.isEnding ? 'q bad' : 'q'}>
                      <b>{held.says}</b>
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" className="nm">
                People who hold it
              </th>
              {keys.map((key) => {
                const count = people.filter(({ held }) =>
                  held.some((each) => each.key === key && each.mayEnd),
                ).length;
                return (
                  <td key={key} className={count === 1 ? 'q one' : 'q'}>
                    <b>{count}</b>
                  </td>
                );
              })}
            </tr>
          </tfoot>
        </table>
      </div>
    </section>
  );
}
