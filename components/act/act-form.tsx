'use client';

import { useId } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { ActRef } from '@/lib/wire/views/desk';
import { AnswerPanel } from './answer-panel';
import { useIsOneHand } from './device';
import { useDesk } from './desk-context';
import { FormField } from './fields/field';
import { PinDialog } from './pin-dialog';
import { useAct } from './use-act';
import type { ActState } from './use-act';
import { useFollowed } from './use-followed';
import { useNow } from './use-now';
import './act.css';

interface ActFormProps {
  readonly act: ActRef;
  /** The heading stands elsewhere already. */
  readonly bare?: boolean;
  /** It weighs less here than it would elsewhere: what is sure to be refused is no main act. */
  readonly weight?: 'main' | 'plain';
}

/** The form of one act, made from the table: its fields, what it would bring, who gives it, and what came of it. */
export function ActForm({ act, bare = false, weight = 'main' }: ActFormProps) {
  const { desk } = useDesk();
  const state = useAct(act);
  const heading = useId();
  const { spec, values, answer, whyNotMe } = state;
  const isOneHand = useIsOneHand();
  const followed = useFollowed(answer, act, desk);
  if (spec === null) return null;
  if (isOneHand && whyNotMe !== null && !DEPENDS.has(act.type))
    return (
      <p className="notmine small">
        <Glyph name="lock" size={20} />
        <span>
          <b>{spec.title}</b> is not for {desk.me.name}. {whyNotMe} Whoever may does it on a tablet of the
          shop, or at their own desk.
        </span>
      </p>
    );
  const isUnknown = answer?.outcome === 'unknown';
  const isSmall = spec.fields.length === 0 && spec.brings.length === 0;
  return (
    <>
      <form
        className={isSmall ? 'actform smallact' : 'actform'}
        aria-labelledby={heading}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          state.submit();
        }}
      >
        <h4 id={heading} className={bare || isSmall ? 'vh' : ''}>
          {spec.title}
        </h4>
        <fieldset className="plain" disabled={isUnknown || state.busy !== null}>
          <legend className="vh">{spec.title}</legend>
          {spec.fields.map((field) => (
            <FormField
              key={`${field.kind} ${field.name} ${String(state.round)}`}
              spec={field}
              values={values}
              error={errorOf(answer, field.name)}
              onChange={state.set}
            />
          ))}
          <Then lines={spec.brings} />
        </fieldset>
        {answer === null ? null : (
          <AnswerPanel
            answer={answer}
            followed={followed}
            car={desk.car}
            act={spec.title}
            onOverride={(override) => void state.give(undefined, override)}
            onPauseFirst={(clock, leftAs) => void state.pauseFirst(clock, leftAs)}
            onAgain={state.askAgain}
            onGive={state.submit}
            onLeave={state.leave}
          />
        )}
        <ActBar state={state} blocked={isUnknown} weight={weight} />
      </form>
      {state.asking ? (
        <PinDialog
          people={isOneHand ? state.people.filter(({ id }) => id === desk.me.id) : state.people}
          default={desk.me.id}
          says={spec.says}
          act={spec.button}
          onPin={(signer) => state.give(signer)}
          onClose={state.stopAsking}
        />
      ) : null}
    </>
  );
}

/** Who may is known only once something in the form is chosen. */
const DEPENDS: ReadonlySet<string> = new Set(['strike-signature']);

/** The door names a claim's field; a check's value stands under its own name. */
const errorOf = (answer: ActState['answer'], name: string): string | null =>
  answer?.outcome === 'bad-input'
    ? (answer.fields.find(({ field }) => field === name || field.endsWith(`.${name}`))?.says ?? null)
    : null;

function Then({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div className="then">
      <p className="label">Then</p>
      <ul>
        {lines.map((line) => (
          <li key={line}>
            <Glyph name="arrow" size={16} /> <span>{line}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

interface ActBarProps {
  readonly state: ActState;
  readonly blocked: boolean;
  readonly weight: 'main' | 'plain';
}

/** Says whose act it will be before it is one, and gives it. */
function ActBar({ state, blocked, weight }: ActBarProps) {
  const { desk } = useDesk();
  const { spec, signs, whyNotMe, missing, busy } = state;
  const isOneHand = useIsOneHand();
  const now = useNow(spec?.readyAt !== undefined);
  if (spec === null) return null;
  const isEarly = spec.readyAt !== undefined && now !== null && now < Date.parse(spec.readyAt);
  return (
    <div className="actbar">
      <p className="t small">
        {busy ??
          (missing !== null ? (
            <b className="stop" role="alert">
              {missing}
            </b>
          ) : isEarly ? (
            'It must hold until its time is over.'
          ) : signs ? (
            'A signature: the PIN is asked.'
          ) : whyNotMe === null ? (
            <>
              As <b>{desk.me.name}</b>.{' '}
              {isOneHand ? null : (
                <button type="button" className="linkish" onClick={state.asSomebody}>
                  Somebody else
                </button>
              )}
            </>
          ) : (
            <>
              <b>{desk.me.name}</b> may not. {whyNotMe} Whoever may gives their PIN.
            </>
          ))}
      </p>
      <Button
        type="submit"
        kind={spec.tone === 'main' ? weight : spec.tone}
        held={blocked || busy !== null || isEarly}
      >
        {spec.button}
      </Button>
    </div>
  );
}
