'use client';

import { useState } from 'react';
import { ActForm } from '@/components/act/act-form';
import { useDesk } from '@/components/act/desk-context';
import { Glyph } from '@/components/ui/glyph';
import type { GlyphName } from '@/components/ui/glyph';
import type { ActRef, CarClaimType } from '@/lib/wire/views/desk';

const WORDS: Partial<Readonly<Record<CarClaimType, readonly [GlyphName, string]>>> = {
  'report-finding': ['finding', 'Finding'],
  'open-joint': ['open', 'Joint opened'],
  'report-disturbed': ['disturbed', 'Stripe broken'],
  'fail-check': ['failed', 'Check fails'],
  'place-stopgap': ['stopgap', 'Stopgap in'],
  'clear-condition': ['gclosed', 'Not so any more'],
  'take-part': ['owed', 'Part taken'],
  'place-hold': ['hold', 'Hold'],
  'strike-signature': ['struck', 'Strike'],
  'send-back': ['gclosed', 'Send back'],
  'add-note': ['hint', 'Remark'],
  assign: ['add', 'Crew of the stage'],
};

const ORDER = Object.keys(WORDS);

interface TroubleProps {
  /** What the address asks for: a signature to strike. */
  readonly first: CarClaimType | null;
}

/** Bad news in two taps, about anything on the car: never hidden, never refused for the state of things. */
export function Trouble({ first }: TroubleProps) {
  const { desk } = useDesk();
  const [chosen, setChosen] = useState<CarClaimType | null>(first);
  const acts = desk.always
    .filter(({ type }) => WORDS[type] !== undefined)
    .sort((a, b) => ORDER.indexOf(a.type) - ORDER.indexOf(b.type));
  const act = acts.find(({ type }) => type === chosen);
  return (
    <section className="sheet trouble" aria-labelledby="trouble">
      <header>
        <h2 id="trouble" tabIndex={-1}>
          Something is wrong
        </h2>
        <span className="dim says">said in two taps, whatever else is open</span>
      </header>
      <div className="tiles">
        {acts.map((each) => (
          <Tile
            key={each.type}
            act={each}
            isOn={each.type === chosen}
            onPress={() => setChosen(each.type === chosen ? null : each.type)}
          />
        ))}
      </div>
      {act === undefined ? null : <ActForm key={act.type} act={act} />}
    </section>
  );
}

interface TileProps {
  readonly act: ActRef;
  readonly isOn: boolean;
  readonly onPress: () => void;
}

function Tile({ act, isOn, onPress }: TileProps) {
  const [sign, says] = WORDS[act.type] ?? ['hint', act.type];
  return (
    <button type="button" aria-expanded={isOn} onClick={onPress}>
      <Glyph name={sign} /> {says}
    </button>
  );
}
