'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { OrderView, PinView, SolvedOrder, Unoffered } from '@/lib/wire/views/order';
import { Approve } from './approve';
import type { Asked } from './asked';
import { CarTags } from './car-tags';
import { Later } from './later';
import { OrderSheet } from './order-sheet';
import { PinDialog } from './pin-dialog';
import { ProofPanel } from './proof-panel';
import { Sent } from './sent';
import './order.css';

interface WeekOrderProps {
  readonly view: OrderView;
  /** Who may approve it; null: whoever looks may not. */
  readonly approver: { readonly id: string; readonly name: string } | null;
}

/** What must be bought this week: with each supplier its lines, the sum, and whether it could be cheaper. */
export function WeekOrder({ view, approver }: WeekOrderProps) {
  const { says, order, unoffered, pins, later, basis, sent } = view;
  const [asked, setAsked] = useState<Asked | null>(null);
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Week’s order</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href="/orders" prefetch={false}>
            All orders
          </Link>
          <Link className="btn" href="/suppliers" prefetch={false}>
            Suppliers and offers
          </Link>
        </p>
      </div>
      <div className={order === null ? 'week-cols none' : 'week-cols'}>
        <div className="week-side">
          {order === null ? <NoOrder view={view} /> : <Sum order={order} approver={approver} />}
          {order === null ? null : <ProofPanel proof={order.proof} />}
          {sent.length === 0 ? null : <Sent orders={sent} />}
          {pins.length === 0 ? null : <Pins pins={pins} onChange={setAsked} />}
          {order === null || order.late.length === 0 ? null : <Late order={order} />}
          {unoffered.length === 0 ? null : <NotOffered items={unoffered} />}
        </div>
        {order === null ? null : (
          <div className="week-sheets">
            {order.sheets.map((sheet) => (
              <OrderSheet key={sheet.key} sheet={sheet} onInsist={setAsked} />
            ))}
          </div>
        )}
      </div>
      {later.length === 0 ? null : <Later lines={later} />}
      <p className="small dim">{basis}</p>
      {asked === null ? null : <PinDialog asked={asked} onClose={() => setAsked(null)} />}
    </>
  );
}

function NoOrder({ view: { hasSuppliers, unoffered, says } }: { readonly view: OrderView }) {
  const isNone = hasSuppliers && unoffered.length === 0;
  return (
    <section className="sheet nothing">
      <Glyph name={isNone ? 'passed' : 'gap'} size={32} />
      <div>
        <h2>{hasSuppliers ? says : 'No suppliers yet'}</h2>
        <p>
          {isNone
            ? 'What cars need and the shelf does not cover stands here as soon as it can’t wait.'
            : hasSuppliers
              ? 'What nobody offers stands below.'
              : 'With suppliers and what they ask for a pack, the cheapest order is worked out here.'}
        </p>
      </div>
    </section>
  );
}

interface SumProps {
  readonly order: SolvedOrder;
  readonly approver: WeekOrderProps['approver'];
}

function Sum({ order: { total, goods, freight, sheets, approval }, approver }: SumProps) {
  return (
    <section className="sheet sum" aria-labelledby="sum">
      <h2 className="label" id="sum">
        To pay, freight in, before tax
      </h2>
      <p className="big num">{total}</p>
      <dl className="rows">
        <div>
          <dt>Goods</dt>
          <dd className="num">{goods}</dd>
        </div>
        <div>
          <dt>Freight</dt>
          <dd className="num">{freight}</dd>
        </div>
        {sheets.map(({ key, name, total: part }) => (
          <div key={key}>
            <dt>{name}</dt>
            <dd className="num">{part}</dd>
          </div>
        ))}
      </dl>
      <Approve approval={approval} approver={approver} total={total} />
    </section>
  );
}

interface PinsProps {
  readonly pins: readonly PinView[];
  readonly onChange: (asked: Asked) => void;
}

function Pins({ pins, onChange }: PinsProps) {
  return (
    <section className="sheet" aria-labelledby="pins">
      <header>
        <h2 id="pins">Insisted on</h2>
      </header>
      <ul className="notes">
        {pins.map((pin) => (
          <li key={pin.item}>
            <Glyph name="seal" />
            <span className="t">
              <b>{pin.name}</b>
              <span className="small">{pin.says}</span>
              <span className="small dim">{pin.cost ?? 'what it costs is not known this week'}</span>
            </span>
            <Button onClick={() => onChange(pin)}>
              Change<span className="vh"> what is insisted on for {pin.name}</span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

const MOST_LATE = 6;

function Late({ order: { late, proof } }: { readonly order: SolvedOrder }) {
  const [isAll, setAll] = useState(false);
  const shown = isAll ? late : late.slice(0, MOST_LATE);
  return (
    <section className="sheet" aria-labelledby="late">
      <header>
        <h2 id="late">Late, whoever brings it</h2>
        <span className="dim small">{proof.lateCarDays} car-days in all</span>
      </header>
      <ul className="notes">
        {shown.map(({ item, says, cars }) => (
          <li key={`${item} ${says}`} className="bad">
            <Glyph name="owed" />
            <span className="t">
              <b>{item}</b>
              <span className="small">{says}</span>
              <CarTags cars={cars} />
            </span>
          </li>
        ))}
      </ul>
      {late.length > MOST_LATE ? (
        <p className="body">
          <Button kind="quiet" aria-expanded={isAll} onClick={() => setAll(!isAll)}>
            {isAll ? 'Only the latest' : `All ${String(late.length)}`}
          </Button>
        </p>
      ) : null}
    </section>
  );
}

function NotOffered({ items }: { readonly items: readonly Unoffered[] }) {
  return (
    <section className="sheet" aria-labelledby="unoffered">
      <header>
        <h2 id="unoffered">Nobody offers it</h2>
      </header>
      <ul className="notes">
        {items.map(({ item, name, quantity, by, cars }) => (
          <li key={item}>
            <Glyph name="gap" />
            <span className="t">
              <b>
                {quantity} {name}
              </b>
              <span className="small dim">
                <span className="nb">{item}</span>
                {by === null ? '' : `, ${by === 'today' ? 'needed today' : `by ${by}`}`}
              </span>
              <CarTags cars={cars} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
