import Link from 'next/link';
import type { EmptyBoard as Empty } from '@/lib/wire/views/board';

/** Nothing to show yet: what is true, and what to do next. */
export function EmptyBoard({ empty }: { readonly empty: Empty }) {
  return (
    <section className="sheet notice">
      <h2>{empty.title}</h2>
      <p>{empty.says}</p>
      {empty.href === null ? null : (
        <p className="acts">
          <Link className="btn main" href={empty.href}>
            {empty.act}
          </Link>
        </p>
      )}
    </section>
  );
}
