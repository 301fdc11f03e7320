'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { jointWords, nameOf } from './use-desk';
import type { Desk } from './use-desk';

/** A signing from before a reload, without an answer: asked again under the same id, it can’t count twice. */
export function PendingPanel({ desk }: { readonly desk: Desk }) {
  const { view, now, signing } = desk;
  const [isOpen, setOpen] = useState(false);
  const { pending } = now.sitting;
  if (pending === null || signing.state.is === 'asking' || signing.state.is === 'unknown') return null;
  const name = nameOf(view, pending.by);
  const what = pending.claim.type === 'snug-joint' ? 'Snug' : 'Final';
  return (
    <section className="so-note stopped">
      <Glyph name="queued" />
      <p>
        <b>
          {what} of {timeOf(pending.doneAt)} by {name} has had no answer.
        </b>{' '}
        It may be recorded or not. Ask again: it can’t count twice.
      </p>
      <Button
        onClick={() => {
          setOpen(true);
        }}
      >
        Ask again
      </Button>
      {isOpen ? (
        <PinDialog
          people={[{ id: pending.by, name }]}
          default={pending.by}
          act="Ask again"
          says={`${what} of ${timeOf(pending.doneAt)}: ${jointWords(view)}.`}
          onClose={() => {
            setOpen(false);
          }}
          onPin={(signer) =>
            desk.signSitting(`${what} signed by ${name}`, pending.claim, { signer, earlier: pending })
          }
        />
      ) : null}
    </section>
  );
}

/** On the device's own clock: what the person remembers. */
export const timeOf = (at: string): string =>
  new Date(at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
