'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { SuppliersView, SupplierView } from '@/lib/wire/views/suppliers';
import { ItemDialog } from './item-dialog';
import { OfferTable } from './offer-table';
import { ReadIn } from './read-in';
import { SupplierDialog } from './supplier-dialog';
import './suppliers.css';

/** Who sells to the shop, on what terms; what each asks for a pack of what; and both as files. */
export function Suppliers({ view: { suppliers, items } }: { readonly view: SuppliersView }) {
  const [asked, setAsked] = useState<SupplierView | 'new' | 'item' | null>(null);
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Suppliers and offers</h1>
          <p className="dim">What the week’s order is chosen from. Prices are for leads and owners only.</p>
        </div>
        <p className="acts">
          <Link className="btn" href="/order" prefetch={false}>
            Week’s order
          </Link>
          <Button onClick={() => setAsked('new')}>Add a supplier</Button>
          <Button onClick={() => setAsked('item')}>Add an item</Button>
        </p>
      </div>
      <section className="sheet" aria-labelledby="suppliers">
        <header>
          <h2 id="suppliers">Suppliers</h2>
        </header>
        <ul className="lines people">
          {suppliers.length === 0 ? (
            <li>
              <Glyph name="gap" />
              <span className="t">
                <b>No suppliers yet</b>
                <span className="small dim">
                  With one, and what it asks for a pack, the week’s order can be worked out.
                </span>
              </span>
            </li>
          ) : null}
          {suppliers.map((supplier) => (
            <li key={supplier.id}>
              <span className="cellbox">{supplier.name.slice(0, 1).toUpperCase()}</span>
              <span className="t">
                <b>{supplier.name}</b>
                <span className="small dim">{supplier.terms.join('; ')}</span>
              </span>
              <span className="small nb">
                {supplier.offers} {supplier.offers === 1 ? 'offer' : 'offers'}
              </span>
              <span className="acts">
                <Button onClick={() => setAsked(supplier)}>
                  Change<span className="vh"> the terms of {supplier.name}</span>
                </Button>
              </span>
            </li>
          ))}
        </ul>
      </section>
      <ReadIn />
      <OfferTable items={items} suppliers={suppliers} />
      {asked === 'item' ? <ItemDialog item={null} onClose={() => setAsked(null)} /> : null}
      {asked === null || asked === 'item' ? null : (
        <SupplierDialog
          supplier={asked === 'new' ? null : asked}
          taken={suppliers.map(({ id }) => id)}
          onClose={() => setAsked(null)}
        />
      )}
    </>
  );
}
