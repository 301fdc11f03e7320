import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';

interface TabletFormProps {
  readonly code: string;
  readonly isWrong: boolean;
}

/** The code that an owner made, typed on the tablet. A plain form: it works before any script has come. */
export function TabletForm({ code, isWrong }: TabletFormProps) {
  return (
    <>
      <form className="sheet card" method="post" action="/api/tablet">
        <header>
          <h1>Make this a shop tablet</h1>
        </header>
        <div className="body">
          <Field
            label="The code"
            hint="eight letters and figures, from the owner’s screen"
            name="code"
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            defaultValue={code}
            maxLength={20}
            autoFocus
            error={
              isWrong ? 'No such code, or it was used, or is too old. The owner makes another one.' : null
            }
            required
          />
          <Button kind="main" type="submit" className="go1">
            Enrol this tablet
          </Button>
          <a className="btn quiet" href="/sign-in?at=bench">
            Back to the bench
          </a>
        </div>
      </form>
      <section className="side">
        <h2>Where the code comes from</h2>
        <ul className="lines">
          <li>
            <Glyph name="tablet" />
            <span className="t">
              <b>An owner makes it at the desk</b>
              <span className="small dim">Set up, Tablets; it is good once, for a quarter of an hour</span>
            </span>
          </li>
        </ul>
      </section>
    </>
  );
}
