'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Checks } from '@/components/set-up/checks';
import type { SoldItem, SoldOffer, SupplierView } from '@/lib/wire/views/suppliers';
import { ItemDialog } from './item-dialog';
import { OfferDialog } from './offer-dialog';

interface OfferTableProps {
  readonly items: readonly SoldItem[];
  readonly suppliers: readonly SupplierView[];
}

interface Asked {
  readonly item: SoldItem;
  readonly what: 'terms' | 'new' | SoldOffer;
}

const UNSOLD = 'only what nobody offers';

const isMatch = ({ key, name }: SoldItem, words: string): boolean =>
  words
    .toLowerCase()
    .split(/\s+/u)
    .every((word) => `${key} ${name}`.toLowerCase().includes(word));

/** Every item with its packs, each of which can be pressed to change it. */
export function OfferTable({ items, suppliers }: OfferTableProps) {
  const [words, setWords] = useState('');
  const [isUnsold, setUnsold] = useState(false);
  const [asked, setAsked] = useState<Asked | null>(null);
  const shown = items.filter(
    (item) => isMatch(item, words.trim()) && (!isUnsold || item.offers.length === 0),
  );
  const close = (): void => setAsked(null);
  return (
    <section className="sheet" aria-labelledby="offers">
      <header>
        <h2 id="offers">Offers, by item</h2>
        <span className="dim" aria-live="polite">
          {shown.length} of {items.length}
        </span>
      </header>
      <div className="body beside">
        <Field
          label="Find"
          type="search"
          value={words}
          onChange={(event) => setWords(event.target.value)}
          autoComplete="off"
        />
        <Checks
          legend="Show"
          all={[UNSOLD]}
          chosen={isUnsold ? [UNSOLD] : []}
          onChange={(chosen) => setUnsold(chosen.length > 0)}
        />
      </div>
      <ul className="sold">
        {shown.map((item) => (
          <li key={item.key}>
            <span className="t">
              <b>{item.name}</b>
              <span className="small dim">
                <span className="nb">{item.key}</span>
                {item.kind === 'own' ? ', the shop’s own' : ''}
                {item.kept.length === 0 ? '' : `; ${item.kept.join('; ')}`}
              </span>
            </span>
            <span className="packs">
              {item.offers.length === 0 ? <span className="dim">nobody offers it</span> : null}
              {item.offers.map((offer) => (
                <button
                  key={offer.id}
                  type="button"
                  className="pack"
                  onClick={() => setAsked({ item, what: offer })}
                >
                  <span>
                    {offer.supplierName.split(' ')[0]} <b>{offer.pack}</b>
                  </span>
                  <span className="num">{offer.says}</span>
                  <span className="vh">: change the offer of {item.name}</span>
                </button>
              ))}
            </span>
            <span className="acts">
              {suppliers.length === 0 ? null : (
                <Button onClick={() => setAsked({ item, what: 'new' })}>
                  Add<span className="vh"> an offer of {item.name}</span>
                </Button>
              )}
              {item.kind === 'part' ? null : (
                <Button kind="quiet" onClick={() => setAsked({ item, what: 'terms' })}>
                  Terms<span className="vh"> of {item.name}</span>
                </Button>
              )}
            </span>
          </li>
        ))}
        {shown.length === 0 ? <li className="dim">Nothing of that name.</li> : null}
      </ul>
      {asked === null ? null : asked.what === 'terms' ? (
        <ItemDialog item={asked.item} onClose={close} />
      ) : (
        <OfferDialog
          item={asked.item}
          offer={asked.what === 'new' ? null : asked.what}
          suppliers={suppliers}
          onClose={close}
        />
      )}
    </section>
  );
}
