import { Glyph } from '@/components/ui/glyph';
import { DeskForm } from './desk-form';
import { doorHref } from './door-props';
import type { DoorProps } from './door-props';
import { RestPanel } from './rest-panel';
import { Said } from './said';
import './sign-in.css';

/** Signing in with a name and a password. */
export function Desk({ view, token, to, name, says }: DoorProps) {
  return (
    <main className="desk">
      {says === null || says === 'wrong' || says === 'resting' || says === 'no-tablet' ? null : (
        <Said says={says} />
      )}
      {view.rest === null ? (
        <DeskForm
          token={token}
          to={to}
          name={name}
          error={says === 'wrong' ? 'Name and password don’t belong together. Try again.' : null}
        />
      ) : (
        <RestPanel
          what={`“${name}”`}
          until={view.rest.until}
          seconds={view.rest.seconds}
          again={doorHref('desk', to, name)}
          at="desk"
        />
      )}
      <section className="side">
        <h2>What a password is for</h2>
        <ul className="lines">
          <li>
            <Glyph name="passed" />
            <span className="t">
              <b>Moving cars on, assigning, setting up</b>
              <span className="small dim">
                what the lead and the owner do; each signature asks a PIN besides
              </span>
            </span>
          </li>
          <li>
            <Glyph name="clock" />
            <span className="t">
              <b>Twelve hours, this browser only</b>
              <span className="small dim">signing out ends it at once, wherever the cookie went</span>
            </span>
          </li>
          <li>
            <Glyph name="tablet" />
            <span className="t">
              <b>Technicians sign in at the bench</b>
              <span className="small dim">by name and PIN</span>
            </span>
            <a className="do" href={doorHref('bench', to)}>
              To the bench
            </a>
          </li>
        </ul>
        <p className="small dim fine">
          Slipmark records and reminds. It does not certify: the maker’s data, local codes and licensed
          practice decide.
        </p>
      </section>
    </main>
  );
}
