import Link from 'next/link';
import type { SetUpStep } from '@/lib/wire/views/set-up';
import { hrefOf, STEP_NAMES } from './step-names';

interface StepBarProps {
  readonly steps: readonly SetUpStep[];
  readonly current: SetUpStep['key'];
}

/** While a shop is being begun: the way on from this step, done or not. */
export function StepBar({ steps, current }: StepBarProps) {
  const at = steps.findIndex(({ key }) => key === current);
  const here = steps[at];
  const next = steps[at + 1];
  if (here === undefined) return null;
  const name = STEP_NAMES[here.key].name;
  return (
    <nav className="sheet signbar step-bar" aria-label="On from this step">
      <span className="t">
        <b>
          Step {at + 1} of {steps.length}: {name}
        </b>
        <span className="small dim">
          {here.isDone ? here.says : 'It can be left out: it asks for itself when it is needed.'}
        </span>
      </span>
      {next === undefined ? (
        <Link className="btn" href="/board" prefetch={false}>
          {here.isDone ? 'Open the board' : 'Leave it for later, open the board'}
        </Link>
      ) : (
        <Link className={here.isDone ? 'btn main' : 'btn'} href={hrefOf(next.key)} prefetch={false}>
          {here.isDone ? 'On to' : 'Leave it for later, on to'} {STEP_NAMES[next.key].name}
        </Link>
      )}
    </nav>
  );
}
