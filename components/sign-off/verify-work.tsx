'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import { Button } from '@/components/ui/button';
import type { VerifyMethod } from '@/lib/domain/base/vocabulary';
import type { CarClaim } from '@/lib/domain/commands';
import type { JointView, PersonView, SignOffView } from '@/lib/wire/views/sign-off';
import { these } from './model/words';
import { InTheWay } from './panels';
import { ReapplyTool, reapplyAt } from './reapply-tool';
import { goesWith, photosLeft } from './sheet-photos';
import { SignBar } from './sign-bar';
import { Standing } from './standing';
import { RejectDialog } from './trouble-dialogs';
import { jointWords, nameOf, SAY_WHICH_CAR } from './use-desk';
import type { Desk } from './use-desk';
import type { Work } from './work';

/** The second person: looks at the joint by its own method, and agrees or does not. */
export function VerifyWork({ desk, notes, photoNote, onOther }: Work) {
  const { view, present } = desk;
  const { joint, car, people } = view;
  const may = people.filter(({ whyNotVerify }) => whyNotVerify === null);
  const [who, setWho] = useState(may.find(({ id }) => id === present)?.id ?? '');
  const [tool, setTool] = useState<string | null>(null);
  const [dialog, setDialog] = useState<'verify' | 'reject' | { readonly reject: string } | null>(null);
  const method: VerifyMethod = joint.verify ?? 'seen';
  const asksTool = method === 're-applied' && joint.method !== 'firm';
  const isBusy = desk.signing.state.is === 'asking';
  const left = whatIsLeft(desk, who, asksTool && tool === null);
  const close = (): void => {
    setDialog(null);
  };
  const rejecting = (reason: string): CarClaim => ({
    type: 'reject-joint',
    car: car.id,
    joint: joint.key,
    cycle: joint.cycle,
    reason,
    ...desk.shots.claimed,
  });
  return (
    <>
      <div className="so-mid">
        {notes.below}
        <InTheWay act="verified" view={view.acts.verify} />
        {notes.above}
        <Standing desk={desk} />
        <section className="so-look">
          <h3>Look at the joint, not at the screen</h3>
          <ul>
            {lookFor(view, method, tool).map((line) => (
              <li key={line}>
                <i aria-hidden="true" />
                {line}
              </li>
            ))}
          </ul>
          <p className="small">
            Performed: <b>{view.standing?.by}</b>, {view.standing?.when} by the server’s clock
            {joint.cycle > 1 ? `, cycle ${String(joint.cycle)}` : ''}.
          </p>
          <Button
            kind="stop"
            onClick={() => {
              setDialog('reject');
            }}
          >
            Not right: say why
          </Button>
        </section>
      </div>
      <section className="so-pad" aria-label="Verify" data-ready={desk.now.isReady || undefined}>
        <Whos people={people} who={who} onWho={setWho} />
        {asksTool ? <ReapplyTool view={view} tool={tool} onTool={setTool} /> : null}
        <SignBar
          says="Verify"
          why={left === '' ? `${methodWords(method)}, asks ${nameOf(view, who)}’s PIN` : left}
          isHeld={left !== '' || isBusy || desk.at.isSure !== true}
          onSign={() => {
            setDialog('verify');
          }}
        >
          {photoNote}
          {onOther}
        </SignBar>
      </section>
      {dialog === 'verify' ? (
        <PinDialog
          people={[{ id: who, name: nameOf(view, who) }]}
          default={who}
          act="Verify"
          says={`Verified, ${methodWords(method)}: ${jointWords(view)}${tool === null ? '' : `, with ${tool}`}.`}
          onClose={close}
          onPin={(signer) =>
            desk.say(
              `Verified by ${nameOf(view, signer.person)}`,
              {
                type: 'verify-joint',
                car: car.id,
                joint: joint.key,
                cycle: joint.cycle,
                method,
                ...(tool === null || !asksTool ? {} : { tool }),
                ...desk.shots.claimed,
              },
              signer,
            )
          }
        />
      ) : null}
      {dialog === 'reject' ? (
        <RejectDialog
          goesWith={goesWith(desk.shots)}
          name={nameOf(view, who === '' ? present : who)}
          onClose={close}
          onReject={(reason) => {
            // Who is signed in says it without more; anybody else says who they are.
            if (who === '' || who === present) {
              close();
              void desk.say('Rejected. The joint is in doubt', rejecting(reason));
            } else setDialog({ reject: reason });
          }}
        />
      ) : null}
      {dialog !== null && typeof dialog === 'object' ? (
        <PinDialog
          people={[{ id: who, name: nameOf(view, who) }]}
          default={who}
          act="Reject"
          says={`Not right: ${dialog.reject}. ${jointWords(view)}.`}
          onClose={close}
          onPin={(signer) => desk.say('Rejected. The joint is in doubt', rejecting(dialog.reject), signer)}
        />
      ) : null}
    </>
  );
}

interface WhosProps {
  readonly people: readonly PersonView[];
  readonly who: string;
  readonly onWho: (person: string) => void;
}

/** Nobody is offered who would be refused; the reason stands beside those who can’t. */
function Whos({ people, who, onWho }: WhosProps) {
  const may = people.filter(({ whyNotVerify }) => whyNotVerify === null);
  return (
    <div className="so-whos" role="group" aria-labelledby="so-whos">
      <span className="label" id="so-whos">
        Who verifies
      </span>
      {may.map(({ id, name, initials }) => (
        <button
          key={id}
          type="button"
          aria-pressed={id === who}
          onClick={() => {
            onWho(id);
          }}
        >
          <b aria-hidden="true">{initials}</b>
          <span>{name}</span>
        </button>
      ))}
      {people.flatMap(({ id, name, initials, whyNotVerify }) =>
        whyNotVerify === null ? (
          []
        ) : (
          <p key={id} className="so-no">
            <b aria-hidden="true">{initials}</b>
            <span>
              {name} {whyNotVerify}
            </span>
          </p>
        ),
      )}
      {may.length === 0 ? <p className="small">Nobody in the shop may verify this now.</p> : null}
    </div>
  );
}

/** Why it can't be verified yet; empty where it can. */
const whatIsLeft = (desk: Desk, who: string, asksTool: boolean): string => {
  if (desk.at.isSure === false) return SAY_WHICH_CAR;
  if (who === '') return 'choose who verifies';
  return asksTool ? 'choose the tool it is tried with' : photosLeft(desk);
};

const methodWords = (method: VerifyMethod): string =>
  method === 're-applied' ? 're-applied' : method === 'seen' ? 'seen' : 'witnessed';

const lookFor = (
  { joint, hardware }: SignOffView,
  method: VerifyMethod,
  tool: string | null,
): readonly string[] => {
  const what = all(joint);
  const once = hardware.filter(({ isOnce }) => isOnce).map(({ name }) => name);
  const stripes =
    joint.fasteners === 1
      ? `one slip mark, ${joint.word.one} to part, unbroken`
      : `${String(joint.fasteners)} slip marks, ${joint.word.one} to part, unbroken`;
  return [
    ...(method === 'witnessed' ? [`you saw ${what} brought to the value, in the order`] : []),
    ...(method === 're-applied' && joint.method !== 'firm'
      ? [`${tool ?? 'the tool'} put on ${what} at ${reapplyAt(joint)}: nothing moves`]
      : []),
    ...(joint.method === 'firm' ? [joint.firmMeans ?? `${what} tight`] : []),
    stripes,
    ...(once.length === 0 ? [] : [`new: ${once.join(', ')}`]),
  ];
};

const all = (joint: JointView): string => these(joint.order, joint.fasteners, joint.word);
