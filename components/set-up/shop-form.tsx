'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import type { ShopAnswer, ShopRequest } from '@/lib/wire/set-up';
import type { ShopSettingView } from '@/lib/wire/views/set-up';
import { isZone, shopTime, zoneOf } from '@/lib/wire/shop-day';
import { ask } from './ask';
import { Wrong } from './wrong';

/** What the shop is called, and by which calendar a moment is a day. */
export function ShopForm({ view }: { readonly view: ShopSettingView }) {
  const router = useRouter();
  const [name, setName] = useState(view.name);
  const [typed, setTyped] = useState(view.zone);
  const zone = zoneOf(typed, view.zones);
  const [answer, setAnswer] = useState<ShopAnswer | null>(null);
  const [isBusy, setBusy] = useState(false);

  const keep = async (): Promise<void> => {
    setBusy(true);
    const got = await ask<ShopAnswer>('/api/set-up/shop', {
      name: name.trim(),
      zone,
    } satisfies ShopRequest);
    setBusy(false);
    setAnswer(got);
    if (got.outcome !== 'done') return;
    announce('The shop’s name and calendar are kept.');
    router.refresh();
  };

  if (!view.mayChange)
    return (
      <p className="said">
        <Glyph name="lock" />
        <span>
          {view.isDemo
            ? 'This is the demo shop, and it keeps its name. A shop of your own is begun beside it.'
            : 'An owner says what the shop is called and by which calendar it counts.'}{' '}
          It is <b>{view.name}</b>, and by the calendar of {view.zone} it is {view.now}.
        </span>
      </p>
    );
  const isChanged = name.trim() !== view.name || zone !== view.zone;
  return (
    <form
      className="sheet form"
      aria-labelledby="shop"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <header>
        <h2 id="shop">Name and calendar</h2>
        <span className="dim">by this calendar it is {view.now}</span>
      </header>
      <div className="body">
        <div className="two">
          <Field
            label="What the shop is called"
            hint="as it stands at the head of every page"
            value={name}
            onChange={(event) => setName(event.target.value)}
            maxLength={100}
            autoComplete="organization"
            required
          />
          <Field
            label="Time zone"
            hint={
              view.mayMove
                ? 'of the shop’s own clock; type a city'
                : 'a car is begun, and its days were counted by it: it stays'
            }
            list="zones"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
            onBlur={() => setTyped(zone)}
            error={isZone(zone) ? null : `${typed} is no time zone. Choose one from the list.`}
            readOnly={!view.mayMove}
            autoComplete="off"
            spellCheck={false}
            required
          />
          <datalist id="zones">
            {view.zones.map((each) => (
              <option key={each} value={each} />
            ))}
          </datalist>
        </div>
        {zone !== view.zone && isZone(zone) ? (
          <p className="small">
            The clock of {zone} shows {shopTime(zone)(new Date().toISOString())} now.
          </p>
        ) : null}
        {answer?.outcome === 'done' && !isChanged ? (
          <p className="said">
            <Glyph name="passed" /> <span>It is kept.</span>
          </p>
        ) : null}
        <Wrong says={answer === null || answer.outcome === 'done' ? null : answer.says} />
        <div className="acts">
          <Button kind="main" type="submit" held={isBusy || !isChanged || !isZone(zone)}>
            Keep it
          </Button>
        </div>
      </div>
    </form>
  );
}
