import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { ReactNode } from 'react';
import type { HardwareView, SignOffView } from '@/lib/wire/views/sign-off';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { HardwareList } from './hardware-list';
import { OrderDrawing } from './order-drawing';
import type { HeadState } from './order-drawing';

interface SideProps {
  readonly view: SignOffView;
  /** `pass 2 of 2`; empty where passes are not the matter. */
  readonly end: string;
  readonly stateOf: (fastener: number) => HeadState;
  readonly claims: readonly FittedClaim[];
  /** What must hold before the final; where the final is asked, it is said larger. */
  readonly showsNeeds: boolean;
  readonly onHardware?: (line: HardwareView) => void;
  readonly onDisturbed: () => void;
  readonly onOpened: () => void;
  readonly children?: ReactNode;
}

/** The order, what goes in, what must hold before, and the way to say that something is wrong. */
export function Side(props: SideProps) {
  const { view, end, stateOf, claims, showsNeeds, onHardware, onDisturbed, onOpened, children } = props;
  const { joint } = view;
  const isTouched = joint.level !== 'open' || joint.opened !== null;
  const isFinal = joint.level === 'final' || joint.level === 'verified';
  return (
    <section className="sheet so-side" aria-label="Order and hardware">
      <header>
        <h2>Order</h2>
        <span className="end small">{end}</span>
      </header>
      <OrderDrawing
        drawing={view.drawing}
        joint={joint}
        stateOf={stateOf}
        isDoubted={view.doubts.length > 0}
      />
      <div className="so-under">
        {joint.fasteners === 1 ? null : (
          <p className="so-order num" aria-hidden="true">
            {joint.order.join(' → ')}
          </p>
        )}
        <Key view={view} stateOf={stateOf} />
        <HardwareList lines={view.hardware} joint={joint} claims={claims} onChange={onHardware} />
        <ul className="so-facts">
          {showsNeeds
            ? view.needs.map((line) => (
                <li key={line.says}>
                  <Glyph name={line.sign} size={20} />
                  <span>
                    <b>{line.says}</b>
                    <br />
                    <span className="small dim">before the final, not before snug</span>
                  </span>
                </li>
              ))
            : null}
          {view.marks.map((mark) => (
            <li key={mark.signature}>
              <Glyph name={mark.struck ? 'struck' : mark.level} size={20} />
              <span>
                <b className={mark.struck ? 'so-struck' : ''}>{mark.level}</b>
                {mark.struck ? ' (struck)' : ''}, {mark.by}
                <br />
                <span className="small dim">{mark.when}</span>
              </span>
            </li>
          ))}
        </ul>
        {children}
        <div className="so-trouble">
          {isFinal ? <Button onClick={onDisturbed}>Not as signed</Button> : null}
          {isTouched ? <Button onClick={onOpened}>It was opened</Button> : null}
        </div>
      </div>
    </section>
  );
}

const KEYS: Readonly<Record<HeadState, string>> = {
  done: 'done; painted when all are signed',
  over: 'over, to be renewed',
  now: 'now',
  todo: 'to come',
  signed: 'signed, slip mark painted',
};

/** Only what is on the drawing. */
function Key({ view, stateOf }: Pick<SideProps, 'view' | 'stateOf'>) {
  const there = new Set(view.joint.order.map(stateOf));
  const shown = (['done', 'over', 'now', 'todo', 'signed'] as const).filter((state) => there.has(state));
  return (
    <ul className="so-key">
      {shown.map((state) => (
        <li key={state}>
          {state === 'signed' ? (
            <Glyph name={view.doubts.length > 0 ? 'disturbed' : view.joint.level} size={20} />
          ) : (
            <svg
              className={`so-keyhead so-head-${state}`}
              width="20"
              height="20"
              viewBox="0 0 24 24"
              aria-hidden="true"
            >
              <circle className={state === 'over' ? 'wash' : 'none'} cx="12" cy="12" r="11" />
              <circle className={state === 'now' ? 'ring' : 'none'} cx="12" cy="12" r="11" />
              <path className="hd" d="M8 5H16L20 12L16 19H8L4 12Z" />
            </svg>
          )}
          {state === 'signed' && view.doubts.length > 0 ? 'signed, and in doubt since' : KEYS[state]}
        </li>
      ))}
    </ul>
  );
}
