import { Glyph } from '@/components/ui/glyph';
import type { SignInView } from '@/lib/wire/views/sign-in';
import { doorHref } from './door-props';
import { Said } from './said';

interface NoTabletProps {
  readonly view: SignInView;
  readonly to: string;
  /** A PIN was set in this browser a moment ago: it holds, though not here. */
  readonly isSet: boolean;
}

/** The bench door of a browser that takes no PINs: why, and who can change it. */
export function NoTablet({ view: { tablet, owners }, to, isSet }: NoTabletProps) {
  const isRevoked = tablet.standing === 'revoked';
  const who = owners.length === 0 ? 'An owner' : owners.join(' or ');
  return (
    <main className="desk">
      {isSet ? <Said says="set-elsewhere" /> : null}
      <section className="sheet card">
        <header>
          <h1>{isRevoked ? 'This tablet was taken off' : 'This tablet is not known here'}</h1>
        </header>
        <div className="body">
          <p>
            {isRevoked
              ? `“${tablet.name ?? 'It'}” stood on the shop’s list and was taken off. No PIN is taken on it, to sign in or to sign.`
              : 'Technicians sign in with name and PIN, but only on tablets that the shop knows. No PIN is taken in this browser.'}
          </p>
          <p>
            <b>{who} can enrol it</b>, in two ways: with a code made at the desk and typed here, or by signing
            in here with the password, under Set up, Tablets.
          </p>
          <a className="btn main go1" href="/tablet">
            Type the code
          </a>
        </div>
      </section>
      <section className="side">
        <h2>Otherwise</h2>
        <ul className="lines">
          <li>
            <Glyph name="lock" />
            <span className="t">
              <b>Owner or lead?</b>
              <span className="small dim">you sign in with a password, from any desk</span>
            </span>
            <a className="do" href={doorHref('desk', to)}>
              To the desk
            </a>
          </li>
          <li>
            <Glyph name="tablet" />
            <span className="t">
              <b>Technician?</b>
              <span className="small dim">
                take a tablet that is on the list; your PIN works on each of them
              </span>
            </span>
          </li>
        </ul>
      </section>
    </main>
  );
}
