import Link from 'next/link';
import './car.css';

interface NoSuchJointProps {
  readonly car: string;
  readonly chassis: string;
  readonly asked: string;
  /** The one that was probably meant. */
  readonly near: { readonly key: string; readonly name: string } | null;
}

/** The car is there, the joint is not. */
export function NoSuchJoint({ car, chassis, asked, near }: NoSuchJointProps) {
  const page = `/cars/${encodeURIComponent(car)}`;
  return (
    <main className="car nosuch">
      <section className="sheet">
        <div className="in">
          <h1>
            {chassis} has no {asked === '' ? 'such joint' : `joint ${asked}`}
          </h1>
          {near === null ? (
            <p>Its joints are on its page, with the work that they belong to.</p>
          ) : (
            <>
              <p>Perhaps this one:</p>
              <ul className="near">
                <li>
                  <Link href={`${page}/joints/${encodeURIComponent(near.key)}`}>
                    <span>
                      {near.key} {near.name}
                    </span>
                  </Link>
                </li>
              </ul>
            </>
          )}
          <p className="acts">
            <Link className="btn" href={page}>
              {chassis}
            </Link>
            <Link className="btn" href="/board">
              Track board
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
