import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { SetUpStep } from '@/lib/wire/views/set-up';
import { hrefOf, standingOf, STEP_NAMES } from './step-names';

interface StepsProps {
  readonly steps: readonly SetUpStep[];
  readonly current: SetUpStep['key'];
}

/** The steps of setting up a shop. Each can be left out and done later. */
export function Steps({ steps, current }: StepsProps) {
  return (
    <nav className="steps sheet" aria-label="Setting up">
      <ol>
        {steps.map((step, at) => {
          const { glyph, says } = standingOf(step);
          return (
            <li key={step.key}>
              <Link
                href={hrefOf(step.key)}
                prefetch={false}
                aria-current={step.key === current ? 'page' : undefined}
              >
                <span className="n">{at + 1}</span>
                <span className="t">
                  <b>{STEP_NAMES[step.key].name}</b>
                  <span className="small dim">{step.says}</span>
                </span>
                <Glyph name={glyph} label={says} />
              </Link>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
