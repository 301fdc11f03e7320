'use client';

import { useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { GRADES } from '@/lib/domain/car/component-rows';
import type { Grade } from '@/lib/domain/car/component-rows';
import type { DonorPartLine } from '@/lib/wire/views/donor';
import { LookDialog } from './look-dialog';
import { MoreDialog } from './part-dialogs';

interface DonorRowProps {
  readonly car: string;
  readonly me: string;
  readonly part: DonorPartLine;
}

/** One part: four grades to tap, the place beside them, the rest behind *More*. */
export function DonorRow({ car, me, part }: DonorRowProps) {
  const {
    key,
    name,
    isCritical,
    lookedAt,
    usual,
    place,
    serial,
    note,
    stands,
    isOpen,
    waitsForLook,
    photos,
  } = part;
  const sending = useSending();
  /** What was tapped and is not answered yet. */
  const [tapped, setTapped] = useState<Grade | null>(null);
  const [asked, setAsked] = useState<'more' | 'look' | null>(null);
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
        {waitsForLook ? (
          <Button onClick={() => setAsked('look')}>
            Look it over<span className="vh">: {name}</span>
          </Button>
        ) : null}
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
      <button type="button" className="where" onClick={() => setAsked('more')}>
        {place === '' ? 'place?' : place}
        <span className="vh">, place, number, remark and photographs of {name}</span>
        {photos.length === 0 ? null : (
          <span className="shots small">
            <Glyph name="photo" size={16} /> {photos.length}
            <span className="vh">, photographs</span>
          </span>
        )}
      </button>
      {asked === 'more' ? (
        <MoreDialog car={car} me={me} part={part} onClose={() => setAsked(null)} />
      ) : asked === 'look' ? (
        <LookDialog
          car={car}
          title={
            <>
              {name} <span className="nb">({key})</span>
            </>
          }
          part={part}
          otherwise="Grade it otherwise instead."
          onClose={() => setAsked(null)}
        />
      ) : sending.answer === null || sending.answer.outcome === 'accepted' ? null : (
        <div className="rowsaid">
          <AnswerLines sending={sending} done="" />
        </div>
      )}
    </li>
  );
}
