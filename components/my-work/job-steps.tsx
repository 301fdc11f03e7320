'use client';

import Link from 'next/link';
import { useState } from 'react';
import { ActList } from '@/components/act/act-list';
import { hasForm } from '@/components/act/form-table';
import { Glyph } from '@/components/ui/glyph';
import type { OpenedJob } from '@/lib/wire/views/my-work';
import { SetTo } from './set-to';

/** Fewer finished lines than these stay open. */
const FOLDED_FROM = 3;

/** The plan's steps, then what finishing it means, line by line: how far each is, its number, and where it is signed. */
export function JobSteps({ job }: { readonly job: OpenedJob }) {
  const { steps, body } = job;
  const left = body.filter(({ isDone }) => !isDone).length;
  const next = body.findIndex((line) => !line.isDone && (line.href !== null || line.acts.some(hasForm)));
  const [isShown, setShown] = useState(false);
  // What is left is what one looks for: on a phone the finished lines would push it off the screen.
  const begun = body.findIndex(({ isDone }) => !isDone);
  const folded = begun >= FOLDED_FROM ? body.slice(0, begun) : [];
  if (steps.length === 0 && body.length === 0) return null;
  return (
    <section className="sheet jobsteps" aria-labelledby="job-steps">
      <header>
        <h3 id="job-steps">Steps</h3>
        {body.length === 0 ? null : (
          <span className="end small dim">
            {String(body.length - left)} of {String(body.length)} done
          </span>
        )}
      </header>
      {steps.length === 0 ? null : (
        <ol className="told-steps">
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      <ol className="lines-of-work">
        {folded.length === 0 ? null : (
          <li className="done">
            <button
              type="button"
              className="bw fold"
              aria-expanded={isShown}
              onClick={() => setShown(!isShown)}
            >
              <Glyph name="passed" />
              <span className="t">{String(folded.length)} done</span>
              <span className="small">{isShown ? 'Fold' : 'Show'}</span>
            </button>
          </li>
        )}
        {body.map((line, index) =>
          index < folded.length && !isShown ? null : (
            <BodyLine key={line.name} line={line} isNext={index === next} />
          ),
        )}
      </ol>
    </section>
  );
}

interface BodyLineProps {
  readonly line: OpenedJob['body'][number];
  /** The first that is not done and can be: its button is the one that is filled. */
  readonly isNext: boolean;
}

function BodyLine({ line, isNext }: BodyLineProps) {
  const [open, setOpen] = useState(false);
  const acts = line.acts.filter(hasForm);
  return (
    <li className={line.isDone ? 'done' : ''}>
      <div className="bw">
        <Glyph name={line.sign} />
        <span className="t">
          {line.name}
          {line.torque === null || line.isDone ? null : <SetTo torque={line.torque} />}
        </span>
        {line.isDone ? <span className="small">done</span> : null}
        {line.href === null ? null : (
          <Link className={isNext ? 'btn main' : 'btn'} href={line.href} prefetch={false}>
            Sign-off<span className="vh"> of {line.name}</span>
          </Link>
        )}
        {acts.length === 0 ? null : (
          <button
            type="button"
            className={line.href !== null ? 'btn quiet' : isNext && !open ? 'btn main' : 'btn'}
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            {open ? 'Fold' : line.href === null ? 'Do it' : 'More'}
            <span className="vh">: {line.name}</span>
          </button>
        )}
      </div>
      {open ? <ActList acts={acts} /> : null}
    </li>
  );
}
