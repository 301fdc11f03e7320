import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import './car.css';

interface NoSuchCarProps {
  readonly asked: string;
  readonly near: readonly {
    readonly id: string;
    readonly chassis: string;
    readonly colour: string | null;
    readonly stage: string;
  }[];
}

/** Not found, and what is near it. */
export function NoSuchCar({ asked, near }: NoSuchCarProps) {
  return (
    <main className="car nosuch">
      <section className="sheet">
        <div className="in">
          <h1>There is no {asked === '' ? 'such car' : asked}</h1>
          {near.length === 0 ? (
            <p>No car stands on the floor. A lead begins one where the shop is set up.</p>
          ) : (
            <>
              <p>Perhaps one of these:</p>
              <ul className="near">
                {near.map(({ id, chassis, colour, stage }) => (
                  <li key={id}>
                    <Link href={`/cars/${encodeURIComponent(id)}`}>
                      <CarTag chassis={chassis} colour={colour} />
                      <span className="small dim">in {stage}</span>
                    </Link>
                  </li>
                ))}
              </ul>
            </>
          )}
          <p className="acts">
            <Link className="btn" href="/board">
              Track board
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
