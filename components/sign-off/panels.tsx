import { RefusalList } from '@/components/shop/refusal-list';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { Draft } from '@/lib/offline/drafts';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { countOf, isOwed } from './model/sitting';
import type { Sitting } from './model/sitting';
import type { SigningState } from './use-signing';

/** What came of the last signing, where it stands: hung from the sheet, never a toast. */
export function SigningPanel({
  state,
  onForget,
}: {
  readonly state: SigningState;
  readonly onForget: () => void;
}) {
  switch (state.is) {
    case 'idle':
      return null;
    case 'asking':
      return (
        <section className="so-note" aria-busy="true">
          <Glyph name="queued" />
          <p>
            <b>{state.tries === 0 ? 'Being signed' : 'No answer yet. Asking again'}</b>
            {state.tries === 0 ? null : <span> It may be recorded already. It can’t count twice.</span>}
          </p>
        </section>
      );
    case 'unknown':
      return (
        <section className="so-note stopped">
          <Glyph name="offline" />
          <p>
            <b>Not known</b> <span>{state.says} Everything is kept on this device.</span>
          </p>
          {state.again === null ? null : <Button onClick={state.again}>Ask again</Button>}
        </section>
      );
    case 'refused':
      return (
        <div className="so-refused">
          <RefusalList
            titleId="so-refused"
            title={`Reported, not accepted: ${state.lines.length === 1 ? 'one reason' : `${String(state.lines.length)} reasons`}. Nothing typed is lost`}
            lines={state.lines}
          />
          <Button kind="quiet" onClick={onForget}>
            Close this list
          </Button>
        </div>
      );
    case 'said':
      return (
        <section className="so-note stopped">
          <Glyph name="failed" />
          <p>
            <b>Not recorded.</b> <span>{state.says}</span>
          </p>
          <Button onClick={onForget}>Close</Button>
        </section>
      );
    case 'signed':
      return (
        <section className="so-note good">
          <Glyph name="passed" />
          <p>
            <b>{state.what}</b>
          </p>
        </section>
      );
  }
}

/** What would be refused whoever signed: said before the hand turns. */
export function InTheWay({
  act,
  view,
}: {
  readonly act: string;
  readonly view: SignOffView['acts']['final'];
}) {
  if (view.inTheWay.length === 0) return null;
  const count =
    view.inTheWay.length === 1 ? 'one thing stands' : `${String(view.inTheWay.length)} things stand`;
  return (
    <RefusalList
      titleId="so-way"
      title={`Not to be signed ${act} yet: ${count} in the way`}
      lines={view.inTheWay}
    />
  );
}

interface DraftNotesProps {
  readonly isKept: boolean;
  /** `10:52`, where a draft was brought back. */
  readonly broughtBack: string | null;
  readonly onDiscard: () => void;
  readonly mayDiscard: boolean;
  readonly others: readonly Draft<Sitting>[];
  readonly view: SignOffView;
  readonly worker: string;
  readonly onDiscardOther: (draft: Draft<Sitting>) => void;
}

/** Whose drafts are on this device. Another's is named, and neither shown nor gone on with. */
export function DraftNotes(props: DraftNotesProps) {
  const { isKept, broughtBack, onDiscard, mayDiscard, others, view, worker, onDiscardOther } = props;
  return (
    <>
      {isKept ? null : (
        <section className="so-note">
          <Glyph name="gap" />
          <p>
            <b>This browser keeps no drafts.</b> A reload loses what is typed. Sign before you leave the page.
          </p>
        </section>
      )}
      {broughtBack === null ? null : (
        <section className="so-note">
          <Glyph name="tablet" />
          <p>
            <b>Draft of {broughtBack} brought back.</b> Was the pass left half way? Then it starts again.
          </p>
          {mayDiscard ? <Button onClick={onDiscard}>Start the pass again</Button> : null}
        </section>
      )}
      {others.map((draft) => (
        <section className="so-note" key={JSON.stringify(draft.key)}>
          <Glyph name="lock" />
          <p>{otherWords(draft, view, worker)}</p>
          {draft.key.person === worker && !isOwed(draft.body) ? (
            <Button
              onClick={() => {
                onDiscardOther(draft);
              }}
            >
              Discard it
            </Button>
          ) : null}
        </section>
      ))}
    </>
  );
}

const otherWords = ({ key, body }: Draft<Sitting>, view: SignOffView, worker: string) => {
  const name = view.people.find(({ id }) => id === key.person)?.name ?? key.person;
  const what = `${countOf(body, view.joint.word)}${key.tool === '' ? '' : ` with ${key.tool.replace(' ', ' and ')}`}`;
  if (key.person !== worker)
    return (
      <>
        <b>{name} has a draft here</b> ({what}
        {key.cycle === view.joint.cycle ? '' : `, cycle ${String(key.cycle)}`}). It is theirs: whoever goes on
        makes the pass again.
      </>
    );
  if (key.cycle !== view.joint.cycle)
    return (
      <>
        <b>A draft of cycle {key.cycle}</b> ({what}): it was opened since, so it counts for nothing now.
      </>
    );
  return (
    <>
      <b>You also have a draft</b> of {what}. One tool makes the whole pass.
    </>
  );
};
