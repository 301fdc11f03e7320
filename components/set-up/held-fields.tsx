import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { Qualification } from '@/lib/domain/shop/rows';
import { Checks } from './checks';

/** A qualification as it is typed; an empty day leaves that end open. */
export interface HeldDraft {
  readonly key: string;
  readonly from: string;
  readonly until: string;
}

/** The same as a command says it. */
export const heldOf = ({ key, from, until }: HeldDraft): Qualification => ({
  key,
  ...(from === '' ? {} : { from }),
  ...(until === '' ? {} : { until }),
});

interface HeldFieldsProps {
  /** What the shop’s plans ask for, and what anybody holds. */
  readonly keys: readonly string[];
  readonly held: readonly HeldDraft[];
  readonly onChange: (held: readonly HeldDraft[]) => void;
}

/** Which qualifications somebody holds, each from a day to a day. */
export function HeldFields({ keys, held, onChange }: HeldFieldsProps) {
  const [more, setMore] = useState('');
  const chosen = held.map(({ key }) => key);
  const word = more.trim();

  const choose = (wanted: readonly string[]): void =>
    onChange(wanted.map((key) => held.find((each) => each.key === key) ?? { key, from: '', until: '' }));
  const write = (key: string, part: Partial<HeldDraft>): void =>
    onChange(held.map((each) => (each.key === key ? { ...each, ...part } : each)));
  const add = (): void => {
    if (word !== '' && !chosen.includes(word)) choose([...chosen, word]);
    setMore('');
  };

  return (
    <>
      <Checks
        legend="Qualified for"
        all={[...keys, ...chosen.filter((key) => !keys.includes(key))]}
        chosen={chosen}
        onChange={choose}
      />
      <div className="beside">
        <Field
          label="Another qualification"
          hint="as the plan writes it"
          value={more}
          onChange={(event) => setMore(event.target.value)}
          maxLength={100}
          autoComplete="off"
        />
        <Button onClick={add} held={word === ''}>
          Add it<span className="vh"> to the qualifications</span>
        </Button>
      </div>
      {held.map(({ key, from, until }) => (
        <fieldset className="two" key={key}>
          <legend className="vh">{key}</legend>
          <Field
            label={`${key} from`}
            hint="empty: from ever"
            type="date"
            value={from}
            onChange={(event) => write(key, { from: event.target.value })}
          />
          <Field
            label={`${key} until`}
            hint="that day too; empty: without an end"
            type="date"
            value={until}
            min={from}
            onChange={(event) => write(key, { until: event.target.value })}
          />
        </fieldset>
      ))}
    </>
  );
}
