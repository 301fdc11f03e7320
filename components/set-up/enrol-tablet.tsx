'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { TabletsView } from '@/lib/wire/views/set-up';
import { TabletFields } from './tablet-fields';
import { useTabletPost } from './use-tablet-post';
import { Wrong } from './wrong';

/** This browser with one press, or another one by a code. The owner's; a lead reads whose it is. */
export function EnrolTablet({ view: { here, hereName, mayEnrol, owners } }: { readonly view: TabletsView }) {
  if (!mayEnrol)
    return (
      <p className="said">
        <Glyph name="lock" />
        <span>An owner enrols tablets: {owners.join(' or ')}. You may take one off.</span>
      </p>
    );
  return (
    <>
      {here === 'tablet' ? (
        <p className="said">
          <Glyph name="passed" />
          <span>
            The browser before you is a tablet of the shop: <b>{hereName}</b>.
          </span>
        </p>
      ) : (
        <EnrolForm
          heading="This browser"
          says="Sign out after it, so that nobody works here under your name."
          act="enrol-this"
          button="Make this a shop tablet"
        />
      )}
      <EnrolForm
        heading="Another tablet"
        says="A code to type on it, good once and for a quarter of an hour."
        act="make-code"
        button="Make a code"
      />
    </>
  );
}

interface EnrolFormProps {
  readonly heading: string;
  readonly says: string;
  readonly act: 'enrol-this' | 'make-code';
  readonly button: string;
}

function EnrolForm({ heading, says, act, button }: EnrolFormProps) {
  const post = useTabletPost();
  const [name, setName] = useState('');
  const [minutes, setMinutes] = useState('5');
  return (
    <form
      className="sheet form"
      aria-labelledby={act}
      onSubmit={(event) => {
        event.preventDefault();
        void post.send(
          { act, name, minutes: Number(minutes) },
          act === 'make-code' ? 'The code is made.' : `${name} is a tablet of the shop.`,
        );
      }}
    >
      <header>
        <h2 id={act}>{heading}</h2>
        <span className="dim">{says}</span>
      </header>
      <div className="body">
        <TabletFields name={name} minutes={minutes} onName={setName} onMinutes={setMinutes} />
        {post.answer?.outcome === 'made' ? (
          <div className="said code-said" role="status">
            <Glyph name="tablet" />
            <span>
              On the tablet open <b>{post.answer.link}</b>, or its bench page and “Type the code”, until{' '}
              {post.answer.until}.<b className="code-big">{post.answer.code}</b>
            </span>
          </div>
        ) : null}
        <Wrong says={post.wrong} />
        <div className="acts">
          <Button kind={act === 'enrol-this' ? 'main' : 'plain'} type="submit" held={post.isBusy}>
            {button}
          </Button>
        </div>
      </div>
    </form>
  );
}
