'use client';

import { BinCell } from '@/components/stock/bin-cell';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { PurchaseLineView } from '@/lib/wire/views/purchase';
import type { Entry } from './entries';

interface GoodsLineProps {
  readonly line: PurchaseLineView;
  readonly entry: Entry;
  /** What its good pieces will be called. */
  readonly lot: string | null;
  readonly onChange: (entry: Entry) => void;
}

/** One line at goods in: where it goes, how many were ordered, what came. */
export function GoodsLine({ line, entry, lot, onChange }: GoodsLineProps) {
  const { name, item, unit, bin, ordered, left, isWhole, amiss, cars } = line;
  const set = (change: Partial<Entry>): void => onChange({ ...entry, ...change });
  const field = (key: 'good' | 'damaged' | 'wrong', label: string) => (
    <Field
      label={
        <>
          {label}
          <span className="vh"> of {name}</span>
        </>
      }
      className="count"
      inputMode="decimal"
      autoComplete="off"
      value={entry[key]}
      onChange={(event) => set({ [key]: event.target.value })}
    />
  );
  return (
    <li className={isWhole ? 'whole' : undefined}>
      <BinCell bin={bin} />
      <span className="t">
        <b>{name}</b>
        <span className="small dim">{unit === '' ? item : `${item}, ${unit}`}</span>
        <span className="small for">
          {cars.map(({ chassis, colour, quantity }) => (
            <span key={chassis}>
              <CarTag chassis={chassis} colour={colour} /> {quantity}
            </span>
          ))}
        </span>
      </span>
      <span className="t still">
        <span>
          <b className="num">{ordered}</b> ordered
        </span>
        <span className={isWhole ? 'small dim' : 'small'}>
          {isWhole ? 'nothing more to come' : `${left} to come`}
          {amiss.map((each) => `; ${each}`)}
        </span>
      </span>
      <span className="counts">
        {field('good', 'Good')}
        {field('damaged', 'Damaged')}
        {field('wrong', 'Wrong')}
        {isWhole ? null : (
          <Button kind="quiet" onClick={() => set({ good: left })}>
            All {left}
            <span className="vh"> of {name}</span>
          </Button>
        )}
      </span>
      {lot === null ? null : <LotFields line={line} lot={lot} entry={entry} onSet={set} />}
    </li>
  );
}

interface LotFieldsProps {
  readonly line: PurchaseLineView;
  readonly lot: string;
  readonly entry: Entry;
  readonly onSet: (change: Partial<Entry>) => void;
}

/** What is known of the lot that is made: its paper, and its last day. */
function LotFields({ line: { name, asksCertificate, goesOff }, lot, entry, onSet }: LotFieldsProps) {
  const isAsked = entry.isAsked ?? asksCertificate;
  const isMissing = isAsked && entry.certificate.trim() === '';
  return (
    <span className="lotin">
      <span className="t">
        <b className="nb">{lot}</b>
        <span className={isMissing ? 'small stop' : 'small dim'}>
          {isMissing ? 'kept apart till its certificate comes' : 'write it on the bag'}
        </span>
      </span>
      <Field
        label={
          <>
            Certificate<span className="vh"> of {name}</span>
          </>
        }
        value={entry.certificate}
        maxLength={100}
        autoComplete="off"
        onChange={(event) => onSet({ certificate: event.target.value })}
      />
      <label className="check">
        <input
          type="checkbox"
          checked={isAsked}
          onChange={(event) => onSet({ isAsked: event.target.checked })}
        />
        <span>
          one is asked for<span className="vh"> of {name}</span>
        </span>
      </label>
      {goesOff ? (
        <Field
          label={
            <>
              Good to<span className="vh">, {name}</span>
            </>
          }
          hint="the last day printed on it"
          type="date"
          value={entry.expires}
          onChange={(event) => onSet({ expires: event.target.value })}
        />
      ) : null}
    </span>
  );
}
