'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { Checks } from '@/components/set-up/checks';
import { shortName } from '@/components/set-up/short-name';
import { useSending } from '@/components/set-up/use-sending';
import { Field, SelectField } from '@/components/ui/field';
import { amount } from '@/lib/domain/base/money';
import { readMoney } from '@/lib/wire/money';
import type { SupplierView } from '@/lib/wire/views/suppliers';
import { freightText, readFreight } from './freight-steps';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

interface SupplierDialogProps {
  /** Null: a new one. */
  readonly supplier: SupplierView | null;
  readonly taken: readonly string[];
  readonly onClose: () => void;
}

/** All terms of a supplier; what they are set to is what holds from then on. */
export function SupplierDialog({ supplier, taken, onClose }: SupplierDialogProps) {
  const sending = useSending();
  const [draft, setDraft] = useState({
    name: supplier?.name ?? '',
    days: (supplier?.orderDays ?? []).map((day) => DAYS[day - 1] ?? ''),
    takesToday: supplier?.takesToday ?? false,
    lead: String(supplier?.lead ?? 2),
    minimum: amount(supplier?.minimumValue ?? 0),
    by: supplier?.freight.by ?? ('value' as const),
    freight: freightText(supplier?.freight ?? { by: 'value', steps: [{ from: 0, fee: 0 }] }),
    mail: supplier?.mail ?? '',
  });
  const set = (part: Partial<typeof draft>): void => setDraft({ ...draft, ...part });
  const steps = readFreight(draft.by, draft.freight);
  const minimum = readMoney(draft.minimum);
  const lead = /^\d{1,3}$/u.test(draft.lead.trim()) ? Number(draft.lead) : null;
  const id = supplier?.id ?? shortName(draft.name, taken);

  const save = (): void => {
    if (steps === null || minimum === null || lead === null) return;
    const mail = draft.mail.trim();
    void sending.send(
      {
        type: 'set-supplier',
        supplier: id,
        name: draft.name.trim(),
        orderDays: DAYS.flatMap((day, index) => (draft.days.includes(day) ? [index + 1] : [])),
        lead,
        takesToday: draft.takesToday,
        minimumValue: minimum,
        freight: { by: draft.by, steps },
        ...(mail === '' ? {} : { mail }),
      },
      `The terms of ${draft.name} are set.`,
      onClose,
    );
  };

  return (
    <AskDialog
      title={supplier === null ? 'Add a supplier' : supplier.name}
      act={supplier === null ? 'Add the supplier' : 'Set these terms'}
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={save}
      onClose={onClose}
    >
      <Field
        label="Name"
        value={draft.name}
        onChange={(event) => set({ name: event.target.value })}
        error={sending.faultOf('name')}
        maxLength={100}
        autoComplete="off"
        required
        data-first
      />
      <Checks
        legend="Orders on"
        all={DAYS}
        chosen={draft.days}
        onChange={(days) => set({ days: [...days] })}
      />
      <Checks
        legend="And"
        all={['takes an order on any day']}
        chosen={draft.takesToday ? ['takes an order on any day'] : []}
        onChange={(chosen) => set({ takesToday: chosen.length > 0 })}
      />
      <div className="two">
        <Field
          label="Working days to arrival"
          value={draft.lead}
          onChange={(event) => set({ lead: event.target.value })}
          error={lead === null ? 'a whole number, like 2' : sending.faultOf('lead')}
          inputMode="numeric"
        />
        <Field
          label="Least value of an order"
          value={draft.minimum}
          onChange={(event) => set({ minimum: event.target.value })}
          error={minimum === null ? 'an amount, like 12.00' : sending.faultOf('minimumValue')}
          inputMode="decimal"
        />
      </div>
      <SelectField
        label="Freight goes by"
        value={draft.by}
        onChange={(event) => set({ by: event.target.value === 'weight' ? 'weight' : 'value' })}
      >
        <option value="value">the value of the goods</option>
        <option value="weight">their weight in grams</option>
      </SelectField>
      <Field
        label="Freight"
        hint="from what on, and how much: 0: 6.50; 90: 0"
        value={draft.freight}
        onChange={(event) => set({ freight: event.target.value })}
        error={steps === null ? 'steps, like 0: 6.50; 90: 0' : null}
      />
      <Field
        label="Address for orders"
        hint="e-mail; empty: they are printed"
        type="email"
        value={draft.mail}
        onChange={(event) => set({ mail: event.target.value })}
        error={sending.faultOf('mail')}
      />
    </AskDialog>
  );
}
