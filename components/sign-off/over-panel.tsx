import Link from 'next/link';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { toDecimalText } from '@/lib/domain/base/exact';
import { asksOf } from './model/asks';
import { deliveredWords } from './model/rows';
import { windowOf } from './model/ruled-joint';
import type { OverReading } from './model/sitting';
import { allOf, capital, these } from './model/words';
import { carHref } from './head';
import type { Desk } from './use-desk';

interface OverPanelProps {
  readonly desk: Desk;
  readonly onOpened: (fasteners: readonly number[], reason: string) => void;
}

/** Bad news is stored the moment it is entered; what it asks is said at once. */
export function OverPanel({ desk, onOpened }: OverPanelProps) {
  const { view, now, overAnswer } = desk;
  const { joint } = view;
  const { over } = now.sitting;
  const fasteners = [...new Set(over.map(({ fastener }) => fastener))];
  const which = these(fasteners, joint.fasteners, joint.word);
  const isStored = over.every(({ sent }) => sent);
  return (
    <section className="refusal so-over" aria-labelledby="so-over">
      <Glyph name="failed" size={32} />
      <div>
        <h3 id="so-over">
          {capital(which)} {fasteners.length === 1 ? 'is' : 'are'} over:{' '}
          {over.map((each) => words(desk, each)).join(', ')}
        </h3>
        <p role="status">
          {isStored ? 'Taken down as read.' : storing(overAnswer)} A lower value can’t take its place. Asked
          now: renew <b>{hardwareOf(desk, fasteners)}</b> at {which}, then the full pass on{' '}
          {joint.fasteners === 1 ? 'it' : allOf(joint.fasteners, joint.word)}
          {joint.passes > 1 ? ` from pass 1` : ''}. A finding is open.
        </p>
      </div>
      <div className="so-bigacts">
        <Link className="btn" href={carHref(view)}>
          Leave it so
        </Link>
        <Button
          kind="stop"
          held={!isStored}
          onClick={() => {
            onOpened(fasteners, `over-torqued: ${which}`);
          }}
        >
          I have new ones: renew
        </Button>
      </div>
    </section>
  );
}

const storing = (answer: Desk['overAnswer']): string => {
  if (answer === null) return 'Kept on this device, on its way to the server.';
  if (answer.outcome === 'unknown')
    return 'No answer from the server yet: kept on this device, and sent again by itself.';
  if (answer.outcome === 'refused')
    return `Kept on this device. The server says: ${answer.refusals.map(({ sentence }) => sentence).join(' ')}`;
  return `Kept on this device and not at the server yet. ${'says' in answer ? answer.says : ''}`;
};

/** `48.7 at the nut, limit 48`. */
const words = ({ view, bench, now }: Desk, over: OverReading): string => {
  const { joint } = view;
  if (joint.angle !== null && over.unit === joint.angle.unit) {
    const { high } = windowOf(joint.angle);
    return `turned ${over.reading}°, limit ${high === null ? '' : toDecimalText(high)}°`;
  }
  const ask = asksOf(joint, bench.tool?.kind ?? null).find(({ id }) => id === over.ask);
  const high = joint.specification.kind === 'window' ? windowOf(joint.specification.window).high : null;
  const got = ask === undefined ? over.reading : deliveredWords(bench, now.sitting, ask, over.reading);
  return `${got} at the ${joint.word.one}, limit ${high === null ? '' : toDecimalText(high)}`;
};

/** What holds that fastener: all of it is spent by being over-torqued. */
const hardwareOf = ({ view }: Desk, fasteners: readonly number[]): string => {
  const names = view.hardware.filter(({ perFastener }) => perFastener || view.joint.fasteners === 1);
  if (names.length === 0) return view.joint.word.many;
  return names
    .map(({ name, quantity }) => {
      const each = (quantity / view.joint.fasteners) * fasteners.length;
      return `${String(Number.isInteger(each) ? each : quantity)} × ${name}`;
    })
    .join(', ');
};
