'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field, SelectField } from '@/components/ui/field';
import { readSize, sizeText } from '@/lib/domain/shop/size';
import { sizeProblemSentence } from '@/lib/domain/shop/size-problem';
import { readBox } from '@/lib/wire/supply-files';
import type { SoldItem } from '@/lib/wire/views/suppliers';

interface ItemDialogProps {
  /** Null: a new one, of the shop's own. */
  readonly item: SoldItem | null;
  readonly onClose: () => void;
}

const REUSES = ['always', 'once fitted', 'once final', '2 times', '3 times', '5 times', '10 times'];

/** What the shop keeps of an item and how; a new one is made by typing its size in a line. */
export function ItemDialog({ item, onClose }: ItemDialogProps) {
  const sending = useSending();
  const terms = item?.terms;
  const [draft, setDraft] = useState({
    key: item?.key ?? '',
    line: '',
    unit: item?.unit ?? 'pc',
    reuse: terms?.reuse ?? 'always',
    trace: terms?.trace ?? ('bulk' as const),
    minimum: terms?.minimum ?? '',
    attrition: terms?.attrition ?? '',
    shelfMonths: terms?.shelfMonths ?? '',
    openedDays: terms?.openedDays ?? '',
    comesWith: terms?.comesWith ?? '',
  });
  const set = (part: Partial<typeof draft>): void => setDraft({ ...draft, ...part });
  const size = draft.line.trim() === '' ? null : readSize(draft.line);
  const box = draft.comesWith.trim() === '' ? {} : readBox(draft.comesWith);
  const counts = [draft.shelfMonths, draft.openedDays].map((text) =>
    text.trim() === '' ? undefined : /^\d{1,5}$/u.test(text.trim()) ? Number(text) : null,
  );
  const [months, days] = counts;

  const save = (): void => {
    if (box === null || counts.includes(null)) return;
    const own =
      item === null
        ? {
            ...(size?.ok === true ? { size: draft.line.trim() } : { name: draft.line.trim() }),
            unit: draft.unit.trim(),
            reuse: draft.reuse,
            trace: draft.trace,
          }
        : {};
    void sending.send(
      {
        type: 'set-item',
        item: draft.key.trim(),
        ...own,
        ...(draft.minimum.trim() === '' ? {} : { minimum: draft.minimum.trim() }),
        ...(draft.attrition.trim() === '' ? {} : { attrition: draft.attrition.trim() }),
        ...(typeof months === 'number' ? { shelfMonths: months } : {}),
        ...(typeof days === 'number' ? { openedDays: days } : {}),
        ...(Object.keys(box).length === 0 ? {} : { comesWith: box }),
        ...(terms === undefined || terms.isPart === '' ? {} : { isPart: terms.isPart }),
      },
      `The terms of ${item?.name ?? draft.line} are set.`,
      onClose,
    );
  };

  return (
    <AskDialog
      title={item?.name ?? 'Add an item'}
      act={item === null ? 'Add the item' : 'Set these terms'}
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={save}
      onClose={onClose}
    >
      {item === null ? (
        <>
          <Field
            label="Size, or what it is"
            hint="3/8-16 x 2 1/2 gr 5, or fan belt"
            value={draft.line}
            onChange={(event) => set({ line: event.target.value })}
            error={sending.faultOf('size') ?? sending.faultOf('name')}
            maxLength={200}
            autoComplete="off"
            required
            data-first
          />
          {size === null ? null : (
            <p className="small" aria-live="polite">
              {size.ok
                ? `Read as ${sizeText(size.value)}.`
                : `No size: it goes by these words alone. ${size.error.map(sizeProblemSentence).join(' ')}`}
            </p>
          )}
          <div className="two">
            <Field
              label="Key"
              hint="as on its bin"
              value={draft.key}
              onChange={(event) => set({ key: event.target.value })}
              error={sending.faultOf('item')}
              maxLength={100}
              autoComplete="off"
              required
            />
            <Field
              label="Unit"
              hint="pc, m, l, kit"
              value={draft.unit}
              onChange={(event) => set({ unit: event.target.value })}
              maxLength={40}
              required
            />
            <SelectField
              label="May be used"
              value={draft.reuse}
              onChange={(event) => set({ reuse: event.target.value })}
            >
              {REUSES.map((reuse) => (
                <option key={reuse}>{reuse}</option>
              ))}
            </SelectField>
            <SelectField
              label="Traced"
              value={draft.trace}
              onChange={(event) => set({ trace: event.target.value === 'lot' ? 'lot' : 'bulk' })}
            >
              <option value="bulk">in bulk, by bin</option>
              <option value="lot">by lot</option>
            </SelectField>
          </div>
        </>
      ) : null}
      <div className="two">
        <Field
          label={`Never fewer than, ${draft.unit}`}
          hint="empty: bought for cars only"
          value={draft.minimum}
          onChange={(event) => set({ minimum: event.target.value })}
          error={sending.faultOf('minimum')}
          inputMode="decimal"
        />
        <Field
          label="Gets lost, %"
          hint="in bulk only"
          value={draft.attrition}
          onChange={(event) => set({ attrition: event.target.value })}
          error={sending.faultOf('attrition')}
          inputMode="decimal"
        />
        <Field
          label="Keeps, months"
          value={draft.shelfMonths}
          onChange={(event) => set({ shelfMonths: event.target.value })}
          error={months === null ? 'a whole number' : sending.faultOf('shelfMonths')}
          inputMode="numeric"
        />
        <Field
          label="Opened, days"
          value={draft.openedDays}
          onChange={(event) => set({ openedDays: event.target.value })}
          error={days === null ? 'a whole number' : sending.faultOf('openedDays')}
          inputMode="numeric"
        />
      </div>
      <Field
        label="In its box"
        hint="NS-M10 4; RB-damper 4"
        value={draft.comesWith}
        onChange={(event) => set({ comesWith: event.target.value })}
        error={box === null ? 'keys and numbers, like NS-M10 4; RB-damper 4' : null}
      />
    </AskDialog>
  );
}
