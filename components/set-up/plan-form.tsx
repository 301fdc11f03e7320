'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field, TextField } from '@/components/ui/field';
import { MOST_PLAN_BYTES, planFileTrouble, TOO_LARGE } from '@/lib/wire/plan-file';
import type { PlanAnswer } from '@/lib/wire/set-up';
import { AnswerLines } from './answer-lines';
import { ask } from './ask';
import { PlanRead } from './plan-read';
import { useSending } from './use-sending';

/** A plan from a file or pasted: read, every problem at its line; then kept and released. */
export function PlanForm() {
  const [text, setText] = useState('');
  const [read, setRead] = useState<PlanAnswer | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [released, setReleased] = useState('');
  const [file, setFile] = useState<string | null>(null);
  const sending = useSending();

  const change = (next: string): void => {
    setText(next);
    setFile(null);
    // What was said of another text would mislead.
    setRead(null);
  };

  const look = async (keep: boolean, said = text): Promise<PlanAnswer> => {
    setBusy(true);
    const answer = await ask<PlanAnswer>('/api/set-up/plans', { text: said, keep });
    setBusy(false);
    setRead(answer);
    return answer;
  };

  const take = async (chosen: File): Promise<void> => {
    sending.clear();
    const said = chosen.size > MOST_PLAN_BYTES ? null : await chosen.text();
    const trouble = said === null ? TOO_LARGE : planFileTrouble(said);
    // What can be no plan isn’t shown: megabytes in a field stop the browser.
    change(trouble === null ? (said ?? '') : '');
    setFile(`${chosen.name}, ${String(Math.ceil(chosen.size / 1000))} kB`);
    if (said === null || trouble !== null)
      setRead({ outcome: 'refused', says: (trouble ?? TOO_LARGE).sentence });
    else await look(false, said);
  };

  const release = async (): Promise<void> => {
    const kept = await look(true);
    if (kept.outcome !== 'read' || kept.hash === null) return;
    const name = `${kept.look?.model ?? ''} ${kept.look?.revision ?? ''}`;
    await sending.send({ type: 'release-plan', plan: kept.hash }, `${name} is released.`, () => {
      setReleased(name);
      change('');
    });
  };

  return (
    <form
      className="sheet form"
      aria-labelledby="add-plan"
      onSubmit={(event) => {
        event.preventDefault();
        sending.clear();
        void look(false);
      }}
    >
      <header>
        <h2 id="add-plan">Read a plan</h2>
        <span className="dim">{file ?? 'nothing is kept before you say so'}</span>
      </header>
      <div className="body">
        <Field
          label="From a file"
          type="file"
          hint="YAML or JSON; it is read at once, and nothing is kept by that"
          accept=".yaml,.yml,.json,text/yaml,application/yaml,application/json,text/plain"
          className="file"
          // The same file, mended and chosen again, is read again.
          onClick={(event) => {
            event.currentTarget.value = '';
          }}
          onChange={(event) => {
            const [chosen] = event.target.files ?? [];
            if (chosen !== undefined) void take(chosen);
          }}
        />
        <TextField
          label="Or pasted"
          value={text}
          onChange={(event) => change(event.target.value)}
          rows={12}
          className="code"
          spellCheck={false}
          autoCapitalize="none"
          required
        />
        <div className="acts">
          <Button type="submit" kind={read === null ? 'main' : 'plain'} held={isBusy}>
            Read it
          </Button>
        </div>
        {read === null ? null : read.outcome === 'read' ? (
          <PlanRead
            read={read}
            text={text}
            isBusy={isBusy || sending.isBusy}
            onRelease={() => void release()}
          />
        ) : (
          <p className="said bad" role="alert">
            {read.says}
          </p>
        )}
        <AnswerLines sending={sending} done={`${released} is released. A car can be begun on it.`} />
        {sending.answer?.outcome === 'accepted' ? (
          <div className="acts">
            <Link className="btn main" href="/set-up/cars" prefetch={false}>
              Begin a car on it
            </Link>
          </div>
        ) : null}
      </div>
    </form>
  );
}
