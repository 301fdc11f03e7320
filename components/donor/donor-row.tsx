'use client';

import { useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import { GRADES } from '@/lib/domain/car/component-rows';
import type { Grade } from '@/lib/domain/car/component-rows';
import type { DonorPartLine } from '@/lib/wire/views/donor';

interface DonorRowProps {
  readonly car: string;
  readonly part: DonorPartLine;
}

/** One part: four grades to tap, the place beside them, the rest behind *More*. */
export function DonorRow({ car, part }: DonorRowProps) {
  const { key, name, isCritical, lookedAt, usual, place, serial, note, stands, isOpen } = part;
  const sending = useSending();
  /** What was tapped and is not answered yet. */
  const [tapped, setTapped] = useState<Grade | null>(null);
  const [isMore, setMore] = useState(false);
  const row = useRef<HTMLLIElement>(null);
  const shown = sending.isBusy ? (tapped ?? part.grade) : part.grade;

  const grade = (next: Grade): void => {
    setTapped(next);
    void sending.send(
      { type: 'grade-parts', car, parts: [{ part: key, grade: next }] },
      `${name} (${key}) is graded ${next}.`,
    );
  };

  const typed = (event: KeyboardEvent): void => {
    const next = GRADES[Number(event.key) - 1];
    if (next === undefined || !isOpen || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    grade(next);
    row.current?.nextElementSibling?.querySelector<HTMLButtonElement>('[data-grade]')?.focus();
  };

  return (
    <li ref={row} className={shown !== null && usual !== null && shown !== usual ? 'odd' : undefined}>
      <span className="ky nb">{key}</span>
      <span className="nm">
        <b>{name}</b>
        <span className="small dim">
          {isCritical ? (
            <>
              <Glyph name="critical" size={16} /> critical;{' '}
            </>
          ) : null}
          {note === '' ? lookedAt : note}
          {serial === '' ? '' : `; number ${serial}`}
        </span>
        {stands === '' ? null : <span className="small">{stands}</span>}
      </span>
      {isOpen ? (
        <span className="four" role="group" aria-label={`Grade of ${name}`}>
          {GRADES.map((each) => (
            <button
              key={each}
              type="button"
              data-grade={each}
              className={each === usual ? 'usual' : undefined}
              aria-pressed={each === shown}
              onClick={() => grade(each)}
              onKeyDown={typed}
            >
              {each}
              {each === usual ? <span className="vh">, usual</span> : null}
            </button>
          ))}
        </span>
      ) : (
        <span className="four shut">{part.grade === null ? 'not graded' : `graded ${part.grade}`}</span>
      )}
      <button type="button" className="where" onClick={() => setMore(true)}>
        {place === '' ? 'place?' : place}
        <span className="vh">, place, number and remark of {name}</span>
      </button>
      {isMore ? (
        <MoreDialog car={car} part={part} onClose={() => setMore(false)} />
      ) : sending.answer === null || sending.answer.outcome === 'accepted' ? null : (
        <div className="rowsaid">
          <AnswerLines sending={sending} done="" />
        </div>
      )}
    </li>
  );
}

function MoreDialog({ car, part, onClose }: DonorRowProps & { readonly onClose: () => void }) {
  const sending = useSending();
  const [place, setPlace] = useState(part.place);
  const [serial, setSerial] = useState(part.serial);
  const [note, setNote] = useState(part.note);
  return (
    <AskDialog
      title={`${part.name} (${part.key})`}
      act="Keep it"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="Kept." />}
      onAct={() =>
        void sending.send(
          { type: 'grade-parts', car, parts: [{ part: part.key, place, serial, note }] },
          `${part.name}: place, number and remark are kept.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="Where it lies"
        value={place}
        maxLength={60}
        data-first
        autoComplete="off"
        onChange={(event) => setPlace(event.target.value)}
      />
      <Field
        label="Number on it"
        value={serial}
        maxLength={60}
        autoComplete="off"
        onChange={(event) => setSerial(event.target.value)}
      />
      <Field
        label="How it was found"
        hint={part.lookedAt === '' ? undefined : `look at: ${part.lookedAt}`}
        value={note}
        maxLength={300}
        autoComplete="off"
        onChange={(event) => setNote(event.target.value)}
      />
    </AskDialog>
  );
}
