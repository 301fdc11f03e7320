import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { HiddenFields } from './hidden-fields';

interface DeskFormProps {
  readonly token: string;
  readonly to: string;
  readonly name: string;
  /** What came of the last try. */
  readonly error: string | null;
}

/** Name and password. A plain form, so that password managers know it and it works before any script has come. */
export function DeskForm({ token, to, name, error }: DeskFormProps) {
  return (
    <form className="sheet card" method="post" action="/api/auth/callback/desk">
      <header>
        <h1>Sign in at the desk</h1>
      </header>
      <div className="body">
        <HiddenFields token={token} to={to} />
        <Field
          label="Name"
          name="name"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          defaultValue={name}
          maxLength={100}
          autoFocus={name === ''}
          required
        />
        <Field
          label="Password"
          name="secret"
          type="password"
          autoComplete="current-password"
          maxLength={200}
          autoFocus={name !== ''}
          error={error}
          required
        />
        <Button kind="main" type="submit" className="go1">
          Sign in
        </Button>
        <p className="small dim">
          For the owner and the lead. After five wrong ones in a row a name rests for half a minute, then for
          twice as long each time, up to a quarter of an hour.
        </p>
      </div>
    </form>
  );
}
