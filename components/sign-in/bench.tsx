import { Glyph } from '@/components/ui/glyph';
import { BenchForm } from './bench-form';
import { doorHref } from './door-props';
import type { DoorProps } from './door-props';
import { RestPanel } from './rest-panel';
import { Said } from './said';
import './sign-in.css';

/** Signing in with a name tile and a PIN, at a bench tablet that several share. */
export function Bench({ view, token, to, name, says }: DoorProps) {
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
      {says === null || says === 'wrong' || says === 'resting' ? null : <Said says={says} />}
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
