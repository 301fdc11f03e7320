'use client';

import Link from 'next/link';
import { useState } from 'react';
import { ActList } from '@/components/act/act-list';
import { hasForm } from '@/components/act/form-table';
import { Glyph } from '@/components/ui/glyph';
import type { BodyRow } from '@/lib/wire/views/car';
import { usePlaces } from './places';

/** What finishing an operation means, in the order of the work; each line opens to what can be claimed about it. */
export function BodyLines({ lines }: { readonly lines: readonly BodyRow[] }) {
  const left = lines.filter(({ isDone }) => !isDone).length;
  return (
    <section className="bodylines">
      <h4>
        What finishing it means{' '}
        <span className="dim">
          {String(lines.length - left)} of {String(lines.length)} done
        </span>
      </h4>
      <ol>
        {lines.map((line) => (
          <BodyLine key={line.name} line={line} />
        ))}
      </ol>
    </section>
  );
}

function BodyLine({ line }: { readonly line: BodyRow }) {
  const { isOpen, toggle } = usePlaces();
  const [unfolded, setUnfolded] = useState(false);
  const open = line.id === null ? unfolded : isOpen(line.id);
  const acts = line.acts.filter(hasForm);
  const flip = (): void => (line.id === null ? setUnfolded(!unfolded) : toggle(line.id));
  return (
    <li id={line.id ?? undefined} className={line.isDone ? 'done' : ''}>
      <div className="bl">
        <Glyph name={line.sign} size={20} />
        <span className="t">{line.name}</span>
        {line.isDone ? <span className="small dim">done</span> : null}
        {acts.length === 0 ? null : (
          <button type="button" className="linkish" aria-expanded={open} onClick={flip}>
            {open ? 'Fold' : wordOf(line)}
            <span className="vh">: {line.name}</span>
          </button>
        )}
        {line.href === null ? null : (
          <Link className="do" href={line.href} prefetch={false}>
            Sheet<span className="vh"> of {line.name}</span> <Glyph name="arrow" size={16} />
          </Link>
        )}
      </div>
      {open ? <ActList acts={acts} /> : null}
    </li>
  );
}

const WORDS: Readonly<Record<string, string>> = {
  'snug-joint': 'Snug',
  'recheck-joint': 'Try again',
  'open-joint': 'Open',
  'pass-check': 'Check',
  'begin-check': 'Begin',
  'place-stopgap': 'Placed',
  'remove-stopgap': 'Take out',
  'set-condition': 'Say so',
  'clear-condition': 'Ends',
  'receive-part': 'Receive',
  'fit-part': 'Fit',
  'add-photo': 'Take it',
};

const wordOf = ({ acts }: BodyRow): string => WORDS[acts[0]?.type ?? ''] ?? 'Do it';
