import { Glyph } from '@/components/ui/glyph';
import { BenchForm } from './bench-form';
import { doorHref } from './door-props';
import type { DoorProps } from './door-props';
import { NoTablet } from './no-tablet';
import { RestPanel } from './rest-panel';
import { Said } from './said';
import './sign-in.css';

/** Signing in with a name tile and a PIN, at a bench tablet that several share. */
export function Bench({ view, token, to, name, says }: DoorProps) {
  if (view.tablet.standing === 'unknown' || view.tablet.standing === 'revoked')
    return <NoTablet view={view} to={to} isSet={says === 'enrolled'} />;
  const chosen = view.people.find(({ id, comesBy }) => id === name && comesBy === 'bench');
  const rest =
    view.rest === null || chosen === undefined ? null : (
      <RestPanel
        what={`${chosen.name}’s PIN`}
        until={view.rest.until}
        seconds={view.rest.seconds}
        again={doorHref('bench', to, chosen.id)}
        at="bench"
      />
    );
  const error =
    says === 'wrong' && rest === null
      ? `This is not ${chosen === undefined ? 'a PIN that fits' : `${chosen.name}’s PIN`}. Try again.`
      : null;
  return (
    <main className="bench">
      {says === null || says === 'wrong' || says === 'resting' || says === 'no-tablet' ? null : (
        <Said says={says} />
      )}
      <BenchForm
        people={view.people}
        chosen={chosen?.id ?? ''}
        token={token}
        to={to}
        error={error}
        rest={rest}
        foot={
          <ul className="foot">
            <li>
              <Glyph name="tablet" size={20} />
              <span className="t">
                {view.tablet.standing === 'demo' ? (
                  'Demo shop: every browser on this machine counts as a tablet.'
                ) : (
                  <>
                    <b>{view.tablet.name}</b> is {view.tablet.says}. Only enrolled tablets take a PIN.
                  </>
                )}{' '}
                It locks after {view.tablet.minutes} minutes at rest.
              </span>
            </li>
            <li>
              <Glyph name="lock" size={20} />
              <span className="t">Owner or lead? You come by the desk, with a password.</span>
              <a className="do" href={doorHref('desk', to)}>
                To the desk
              </a>
            </li>
          </ul>
        }
      />
    </main>
  );
}
