'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { SetUpTablet, TabletsView } from '@/lib/wire/views/set-up';
import { ChangeTabletDialog, RevokeTabletDialog } from './tablet-dialogs';

/** Every tablet that the shop knows or knew, and what can be done about each. */
export function TabletList({ view: { tablets, here, mayEnrol } }: { readonly view: TabletsView }) {
  return (
    <section className="sheet" aria-labelledby="tablets">
      <header>
        <h2 id="tablets">Enrolled</h2>
        <span className="dim">one that went astray is taken off, and takes no PIN from that moment</span>
      </header>
      <ul className="lines people">
        {here === 'demo' ? (
          <li>
            <Glyph name="tablet" />
            <span className="t">
              <b>Demo shop: every browser on this machine counts as a tablet</b>
              <span className="small dim">In a shop of your own each one is enrolled first, as below.</span>
            </span>
          </li>
        ) : null}
        {tablets.length === 0 && here !== 'demo' ? (
          <li>
            <Glyph name="gap" />
            <span className="t">
              <b>No tablet yet</b>
              <span className="small dim">Until there is one, technicians can’t sign in anywhere.</span>
            </span>
          </li>
        ) : null}
        {tablets.map((tablet) => (
          <TabletLine key={tablet.device} tablet={tablet} mayChange={mayEnrol} />
        ))}
      </ul>
    </section>
  );
}

interface TabletLineProps {
  readonly tablet: SetUpTablet;
  readonly mayChange: boolean;
}

function TabletLine({ tablet, mayChange }: TabletLineProps) {
  const [open, setOpen] = useState<'change' | 'revoke' | null>(null);
  const { name, says, who, minutes, isThis, revoked } = tablet;
  const close = (): void => setOpen(null);
  return (
    <li>
      <Glyph name={revoked === null ? 'tablet' : 'lock'} />
      <span className="t">
        <b>
          {name}
          {isThis ? ', this browser' : ''}
        </b>
        <span className="small dim">{says}</span>
        <span className="small">
          {revoked === null
            ? `${who === null ? 'nobody is signed in on it' : `${who} is signed in on it`}; locks after ${String(minutes)} minutes at rest`
            : `taken off ${revoked}: no PIN is taken on it`}
        </span>
      </span>
      {revoked === null ? (
        <span className="acts">
          {mayChange ? (
            <Button onClick={() => setOpen('change')}>
              Change<span className="vh"> {name}</span>
            </Button>
          ) : null}
          <Button kind="quiet" onClick={() => setOpen('revoke')}>
            Take off<span className="vh"> {name}</span>
          </Button>
        </span>
      ) : null}
      {open === 'change' ? <ChangeTabletDialog tablet={tablet} onClose={close} /> : null}
      {open === 'revoke' ? <RevokeTabletDialog tablet={tablet} onClose={close} /> : null}
    </li>
  );
}
