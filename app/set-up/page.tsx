import type { Metadata } from 'next';
import { Frame } from './frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Set up' };

export default function Page() {
  return (
    <Frame
      current={null}
      title="Set up the shop"
      says="Every step can be left out and done later; nothing is made up for you."
      page={() => (
        <section className="sheet">
          <header>
            <h2>What each step is for</h2>
          </header>
          <ul className="lines numbered">
            <li>
              <span className="n" aria-hidden="true">
                1
              </span>
              <span className="t">
                <b>People</b>
                <span className="small dim">
                  who works here, in which roles, with which qualifications. Each gets a link and sets a PIN
                  that nobody else knows.
                </span>
              </span>
            </li>
            <li>
              <span className="n" aria-hidden="true">
                2
              </span>
              <span className="t">
                <b>Tablets</b>
                <span className="small dim">
                  where technicians sign in and sign by PIN. Only those that you enrol take one; a lost one is
                  taken off with one press.
                </span>
              </span>
            </li>
            <li>
              <span className="n" aria-hidden="true">
                3
              </span>
              <span className="t">
                <b>Tools</b>
                <span className="small dim">
                  torque tools with range and calibration. A joint can be snug without one, and final only
                  with one that fits.
                </span>
              </span>
            </li>
            <li>
              <span className="n" aria-hidden="true">
                4
              </span>
              <span className="t">
                <b>Build plan</b>
                <span className="small dim">
                  stages, operations, joints, checks. It is read and checked by line; what is released is
                  frozen.
                </span>
              </span>
            </li>
            <li>
              <span className="n" aria-hidden="true">
                5
              </span>
              <span className="t">
                <b>Begin a car</b>
                <span className="small dim">
                  a chassis number on a released plan. Its plate then stands on the board.
                </span>
              </span>
            </li>
          </ul>
        </section>
      )}
    />
  );
}
