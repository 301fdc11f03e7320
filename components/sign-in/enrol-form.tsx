import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';

interface EnrolFormProps {
  readonly token: string;
  readonly name: string;
  readonly wantsPassword: boolean;
  readonly faults: { readonly password: readonly string[]; readonly pin: readonly string[] };
  readonly isBusy: boolean;
}

/** One's own password and PIN, set once from a link. A plain form: it works before any script has come. */
export function EnrolForm({ token, name, wantsPassword, faults, isBusy }: EnrolFormProps) {
  return (
    <>
      <form className="sheet card" method="post" action="/api/enrol">
        <header>
          <h1>{wantsPassword ? 'Your password and PIN' : 'Your PIN'}</h1>
        </header>
        <div className="body">
          {isBusy ? <p className="msg">Too many at once. Nothing was set; try again in a moment.</p> : null}
          <input type="hidden" name="token" value={token} />
          <p>
            For <b>{name}</b>. Nobody else sees what you set here.
          </p>
          <input
            className="vh"
            type="text"
            autoComplete="username"
            value={name}
            readOnly
            tabIndex={-1}
            aria-hidden="true"
          />
          {wantsPassword ? (
            <>
              <Field
                label="Password"
                hint="At least 15 characters. Three or four words that don’t belong together are easy to keep."
                name="password"
                type="password"
                autoComplete="new-password"
                minLength={15}
                maxLength={200}
                error={faults.password[0] ?? null}
                required
              />
              <Field
                label="The password once more"
                name="password-again"
                type="password"
                autoComplete="new-password"
                maxLength={200}
                required
              />
            </>
          ) : null}
          <Field
            label="PIN"
            hint="Six figures with no pattern. It is asked at each signature."
            name="pin"
            type="password"
            inputMode="numeric"
            autoComplete="off"
            pattern="\d{6}"
            title="six figures"
            maxLength={6}
            error={faults.pin[0] ?? null}
            required
          />
          <Field
            label="The PIN once more"
            name="pin-again"
            type="password"
            inputMode="numeric"
            autoComplete="off"
            pattern="\d{6}"
            title="six figures"
            maxLength={6}
            required
          />
          <Button kind="main" type="submit" className="go1">
            Set it
          </Button>
        </div>
      </form>
      <section className="side">
        <h2>What it is for</h2>
        <ul className="lines">
          <li>
            <Glyph name="final" />
            <span className="t">
              <b>A PIN is your signature</b>
              <span className="small dim">whoever knows it signs as you, on every car</span>
            </span>
          </li>
          <li>
            <Glyph name="lock" />
            <span className="t">
              <b>Kept as a hash</b>
              <span className="small dim">
                it can’t be read back, not even by the owner; a new one needs a new link
              </span>
            </span>
          </li>
          <li>
            <Glyph name="clock" />
            <span className="t">
              <b>This link works once</b>
              <span className="small dim">setting it signs you out wherever you were signed in</span>
            </span>
          </li>
        </ul>
      </section>
    </>
  );
}
