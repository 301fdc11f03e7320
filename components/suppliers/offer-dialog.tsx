'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import { readMoney } from '@/lib/wire/money';
import { readPrices } from '@/lib/wire/supply-files';
import type { SoldItem, SoldOffer, SupplierView } from '@/lib/wire/views/suppliers';

interface OfferDialogProps {
  readonly item: SoldItem;
  /** Null: a new one. */
  readonly offer: SoldOffer | null;
  readonly suppliers: readonly SupplierView[];
  readonly onClose: () => void;
}

/** What a supplier asks for a pack. Another pack of the same item is another offer. */
export function OfferDialog({ item, offer, suppliers, onClose }: OfferDialogProps) {
  const sending = useSending();
  const [draft, setDraft] = useState({
    supplier: offer?.supplier ?? suppliers[0]?.id ?? '',
    pack: offer?.pack.split(' ')[0] ?? '',
    prices: offer?.prices ?? '',
    weight: offer === null || offer.weight === 0 ? '' : String(offer.weight),
    number: offer?.number ?? '',
    deposit: offer?.deposit ?? '',
  });
  const set = (part: Partial<typeof draft>): void => setDraft({ ...draft, ...part });
  const prices = readPrices(draft.prices);
  const weight = draft.weight === '' ? 0 : /^\d{1,8}$/u.test(draft.weight) ? Number(draft.weight) : null;

  const deposit = draft.deposit.trim() === '' ? 0 : readMoney(draft.deposit);

  const save = (): void => {
    if (prices === null || weight === null || deposit === null) return;
    const number = draft.number.trim();
    void sending.send(
      {
        type: 'set-offer',
        supplier: draft.supplier,
        item: item.key,
        pack: draft.pack.trim(),
        prices,
        weight,
        ...(number === '' ? {} : { number }),
        ...(deposit === 0 ? {} : { deposit }),
      },
      `The offer of ${item.name} is set.`,
      onClose,
    );
  };
  const end = (): void => {
    if (offer === null) return;
    void sending.send({ type: 'end-offer', offer: offer.id }, 'The offer has ended.', onClose);
  };

  return (
    <AskDialog
      title={item.name}
      act={offer === null ? 'Add the offer' : 'Set this price'}
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={save}
      onClose={onClose}
    >
      {offer === null ? (
        <div className="two">
          <SelectField
            label="Supplier"
            value={draft.supplier}
            onChange={(event) => set({ supplier: event.target.value })}
          >
            {suppliers.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </SelectField>
          <Field
            label={`Pack, ${item.unit}`}
            value={draft.pack}
            onChange={(event) => set({ pack: event.target.value })}
            error={sending.faultOf('pack')}
            inputMode="decimal"
            required
            data-first
          />
        </div>
      ) : (
        <p>
          {offer.supplierName}, pack of {offer.pack}
        </p>
      )}
      <Field
        label="Price of a pack"
        hint="4.20, or with steps 1: 4.20; 10: 3.90"
        value={draft.prices}
        onChange={(event) => set({ prices: event.target.value })}
        error={prices === null && draft.prices !== '' ? 'an amount, or steps, like 1: 4.20; 10: 3.90' : null}
        required
      />
      <div className="two">
        <Field
          label="Weight of a pack, g"
          hint="where freight goes by weight"
          value={draft.weight}
          onChange={(event) => set({ weight: event.target.value })}
          error={weight === null ? 'a whole number of grams' : sending.faultOf('weight')}
          inputMode="numeric"
        />
        <Field
          label="Their number"
          hint="stands on the order"
          value={draft.number}
          onChange={(event) => set({ number: event.target.value })}
          maxLength={100}
        />
      </div>
      <Field
        label="Deposit on a pack"
        hint="comes back for the old part; no part of the price"
        value={draft.deposit}
        onChange={(event) => set({ deposit: event.target.value })}
        error={deposit === null ? 'an amount such as 18.00' : sending.faultOf('deposit')}
        inputMode="decimal"
      />
      {offer === null ? null : (
        <Button kind="quiet" onClick={end} held={sending.isBusy}>
          They sell it no longer
        </Button>
      )}
    </AskDialog>
  );
}
