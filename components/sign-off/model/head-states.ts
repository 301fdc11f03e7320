/** How each fastener is drawn: what this sitting has done, or what the joint stands by. */
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { asksOf } from './asks';
import type { Bench } from './judge';
import { currentAsk, isOver, isSettled } from './moves';
import type { Sitting } from './sitting';

type HeadState = 'todo' | 'now' | 'done' | 'over' | 'signed';

interface Shown {
  readonly view: SignOffView;
  readonly bench: Bench;
  readonly now: { readonly sitting: Sitting };
}

export const headStates = (
  { view, bench, now }: Shown,
  mode: SignOffView['next'],
): ((fastener: number) => HeadState) => {
  const { level } = view.joint;
  const isPainted = level === 'final' || level === 'verified';
  if (mode !== 'final') {
    const over = view.doubts
      .filter(({ cause }) => cause === 'over-torque')
      .flatMap(({ fasteners }) => fasteners ?? []);
    return (fastener) => (over.includes(fastener) ? 'over' : isPainted ? 'signed' : 'todo');
  }
  const { sitting } = now;
  const asks = asksOf(view.joint, bench.tool?.kind ?? null);
  const current = currentAsk(bench, sitting);
  const pass = current?.kind === 'tap' ? current.pass : view.joint.passes;
  return (fastener) => {
    // Of the pass that is made now: an earlier one says nothing any more.
    const mine = asks.filter(
      (ask) => 'fastener' in ask && ask.fastener === fastener && (ask.kind !== 'tap' || ask.pass === pass),
    );
    if (mine.some((ask) => isOver(sitting, ask))) return 'over';
    if (
      current !== null &&
      'fastener' in current &&
      current.fastener === fastener &&
      sitting.over.length === 0
    )
      return 'now';
    return mine.length > 0 && mine.every((ask) => isSettled(bench, sitting, ask)) ? 'done' : 'todo';
  };
};
