'use client';

import { useState } from 'react';
import type { ReactNode } from 'react';
import { Button } from '@/components/ui/button';
import type { KitPickLine } from '@/lib/wire/views/kits';
import { shortOf } from './sources';

interface HowManyProps {
  readonly line: KitPickLine;
  /** `AX-080, left`. */
  readonly work: string;
  readonly isBusy: boolean;
  readonly said: ReactNode;
  readonly onHas: (quantity: string) => void;
  readonly onBack: () => void;
}

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'];

/** How many were in the bin, on keys for gloves; the button says what follows. */
export function HowMany({ line, work, isBusy, said, onHas, onBack }: HowManyProps) {
  const { name, bin, left, coming, says, from } = line;
  const [typed, setTyped] = useState('');
  const has = typed === '' ? '0' : String(Number(typed));
  const short = shortOf(left, has);
  const press = (key: string): void => setTyped((typed + key).slice(0, 5));
  return (
    <section className="now" aria-labelledby="kit-many">
      <div>
        <h2 id="kit-many">How many were there?</h2>
        <p className="small dim">{`${bin ?? 'No bin'}, ${name}. ${says}`}</p>
      </div>
      <output className="asked num" aria-live="polite">
        {has} <small>{`of ${left}; ${short === '0' ? 'none short' : `${short} short`}`}</small>
      </output>
      <div className="keys" role="group" aria-label="Keys">
        {KEYS.map((key) => (
          <Button key={key} onClick={() => press(key)}>
            {key}
          </Button>
        ))}
        <Button className="alt" onClick={() => setTyped('')}>
          Clear
        </Button>
        <Button onClick={() => press('0')}>0</Button>
        <Button className="alt" onClick={onBack}>
          Back
        </Button>
      </div>
      {short === '0' ? null : (
        <p className="small">
          The kit stays open for {short}: {work} becomes <b>ready but for parts</b>, {coming}.
          {from.length === 0 ? '' : ' The bin is put down as empty.'}
        </p>
      )}
      {said}
      <Button kind="main" className="big" held={isBusy} onClick={() => onHas(has)}>
        {short === '0' ? `${has} in the box` : `${has} in the box, ${short} short`}
      </Button>
    </section>
  );
}
