import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { SetUpStep } from '@/lib/wire/views/set-up';

const NAMES: Readonly<Record<SetUpStep['key'], string>> = {
  people: 'People',
  tablets: 'Tablets',
  tools: 'Tools',
  plans: 'Build plan',
  cars: 'Begin a car',
};

interface StepsProps {
  readonly steps: readonly SetUpStep[];
  readonly current: SetUpStep['key'] | null;
}

/** The steps of setting up a shop. Each can be left out and done later. */
export function Steps({ steps, current }: StepsProps) {
  return (
    <nav className="steps sheet" aria-label="Setting up">
      <ol>
        {steps.map(({ key, says, isDone }, at) => (
          <li key={key}>
            <Link href={`/set-up/${key}`} aria-current={key === current ? 'page' : undefined}>
              <span className="n">{at + 1}</span>
              <span className="t">
                <b>{NAMES[key]}</b>
                <span className="small dim">{says}</span>
              </span>
              {isDone ? <Glyph name="passed" label="begun" /> : <Glyph name="due" label="not yet" />}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
