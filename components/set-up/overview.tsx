import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { SetUpSteps } from '@/lib/wire/views/set-up';
import { hrefOf, standingOf, STEP_NAMES } from './step-names';

/** Every step with what it is for and how it stands, and the way on from here. */
export function Overview({ view: { steps, isBeginning } }: { readonly view: SetUpSteps }) {
  const next = steps.find(({ isDone, isLeft }) => !isDone && !isLeft);
  return (
    <section className="sheet overview" aria-labelledby="steps">
      <header>
        <h2 id="steps">{isBeginning ? 'One sitting, step by step' : 'What there is'}</h2>
        <span className="dim">each can be left out and come back to</span>
      </header>
      <ol className="lines">
        {steps.map((step, at) => {
          const { glyph, says } = standingOf(step);
          const { name, means } = STEP_NAMES[step.key];
          return (
            <li key={step.key}>
              <span className="n" aria-hidden="true">
                {at + 1}
              </span>
              <span className="t">
                <b>{name}</b>
                <span className="small">{step.says}</span>
                <span className="small dim">{means}</span>
              </span>
              <span className="standing">
                <Glyph name={glyph} /> {says}
              </span>
              <Link className="btn" href={hrefOf(step.key)} prefetch={false}>
                {step.isDone ? 'Open' : step.isLeft ? 'Go back to it' : 'Begin'}
                <span className="vh">: {name}</span>
              </Link>
            </li>
          );
        })}
      </ol>
      {isBeginning ? (
        <div className="signbar">
          <span className="t">
            <b>{next === undefined ? 'A car can be begun' : `Next: ${STEP_NAMES[next.key].name}`}</b>
            <span className="small dim">What you leave out asks for itself when it is needed.</span>
          </span>
          <Link className="btn" href="/board" prefetch={false}>
            Open the board
          </Link>
          <Link className="btn main" href={hrefOf(next?.key ?? 'cars')} prefetch={false}>
            Go on with {STEP_NAMES[next?.key ?? 'cars'].name}
          </Link>
        </div>
      ) : null}
    </section>
  );
}
