/** What happened on a car, as a line of its log. Exhaustive: an event without words does not compile. */
import { toDecimalText } from '@/lib/domain/base/exact';
import { all } from '@/lib/domain/base/words';
import { fromExactText } from '@/lib/domain/car/joint';
import type { Mark } from '@/lib/domain/car/joint-rows';
import type { RowSign } from './car';
import { line, matterLine, pieceLine, usedText } from './event-matters';
import type { Happening, Words } from './event-words';
import type { EventLine } from './log';

/** A few plain words, with the plan's names and people's names in place of keys. */
export const eventLine = (event: Happening, words: Words): EventLine => {
  const { thing, person } = words;
  const by = event.meta === undefined ? 'somebody' : person(event.meta.by, event.meta.at);
  switch (event.type) {
    case 'car-started':
      return line('add', event.chassis, 'is begun');
    case 'option-chosen':
      return line('deviation', thing(event.option), `is ${event.choice}`);
    case 'job-assigned':
      return line(
        'hint',
        words.job(event.job),
        event.people.length === 0
          ? 'is given to nobody'
          : `is given to ${all(event.people.map((id) => person(id, event.meta?.at)))}`,
      );
    case 'note-added':
      return line('hint', event.of === event.car ? '' : thing(event.of), `“${event.text}”`);
    case 'photo-added':
      return line(
        'photo',
        event.of === event.car ? event.car : thing(event.of),
        `is photographed: ${event.slot}`,
      );
    case 'operation-started':
      return line('gopen', thing(event.operation), `is begun${runText(event.run)}`);
    case 'operation-joined':
      return line('gopen', thing(event.operation), `has ${by} on it too`);
    case 'operation-paused':
      return line(
        'clock',
        thing(event.operation),
        event.leftAs === null ? 'is paused' : `is paused, left as: ${event.leftAs}`,
      );
    case 'operation-left':
      return line(
        'clock',
        thing(event.operation),
        event.leftAs === null ? `goes on without ${by}` : `goes on without ${by}, left as: ${event.leftAs}`,
      );
    case 'operation-resumed':
      return line('gopen', thing(event.operation), event.takenOver ? `is taken over by ${by}` : 'goes on');
    case 'operation-finished':
      return line('passed', thing(event.operation), `is finished${usedText(event.drawn, words)}`);
    case 'operation-due-again':
      return line('due', thing(event.operation), `is due again${runText(event.run)}: ${event.because}`);
    case 'operation-reopened':
      return line('due', thing(event.operation), 'is open again');
    case 'hardware-fitted':
      return pieceLine('onetime', thing(event.joint), `got ${fittedText(event.fasteners, words)}`);
    case 'joint-marked':
      return pieceLine(event.mark.level, thing(event.joint), markedText(event.mark));
    case 'joint-rechecked':
      return pieceLine('final', thing(event.joint), 'is tried again; nothing moved');
    case 'joint-opened':
      return pieceLine(openSign(event.was), thing(event.joint), openedText(event));
    case 'joint-doubted':
      return pieceLine('disturbed', thing(event.joint), `is in doubt: ${event.doubt.because}`);
    case 'joint-over-torqued':
      return pieceLine(
        'disturbed',
        thing(event.joint),
        `no. ${String(event.fastener)} went over: ${event.reading} ${event.unit}`,
      );
    case 'mark-struck':
      return pieceLine(
        'struck',
        thing(event.joint),
        event.signatures.length === 1
          ? 'has lost a signature'
          : `has lost ${String(event.signatures.length)} signatures`,
      );
    default:
      return matterLine(event, words);
  }
};

const MARKED = {
  snug: 'is run up snug',
  final: 'is brought to final',
  verified: 'is verified',
} as const;

/** With what it was done and what the fasteners got, as it was then. */
const markedText = ({ level, tool, extremes, window, method }: Mark): string => {
  const how = level === 'verified' && method !== null ? `, ${method}` : '';
  const by = tool === null ? '' : `, ${tool}`;
  if (extremes === null || window === null) return `${MARKED[level]}${how}${by}`;
  const [least, most] = [extremes.least, extremes.most].map((text) => toDecimalText(fromExactText(text), 2));
  const got = least === most ? (least ?? '') : `${least ?? ''} to ${most ?? ''}`;
  return `${MARKED[level]}${how}${by}: ${got} ${window.unit}`;
};

const runText = (run: number): string => (run === 1 ? '' : `, run ${String(run)}`);

const openSign = (was: string): RowSign => (was === 'final' || was === 'verified' ? 'disturbed' : 'open');

const openedText = (event: Extract<Happening, { type: 'joint-opened' }>): string => {
  const { fasteners } = event;
  const which = `${fasteners.length === 1 ? 'no.' : 'nos.'} ${fasteners.join(' ')}`;
  const was = event.was === 'open' ? '' : `; it was ${event.was}`;
  const why = event.reason === null || event.reason === '' ? '' : `: ${event.reason}`;
  return `is opened, ${which}, cycle ${String(event.cycle)}${was}${why}`;
};

type Fitted = Extract<Happening, { type: 'hardware-fitted' }>['fasteners'];

/** What went in, how many of each, and from which lots. */
const fittedText = (fasteners: Fitted, { thing }: Words): string => {
  const counts = new Map<string, number>();
  const lots = new Set<string>();
  for (const row of Object.values(fasteners))
    for (const { item, lot } of Object.values(row)) {
      counts.set(item, (counts.get(item) ?? 0) + 1);
      if (lot !== null) lots.add(lot);
    }
  const items = all([...counts].map(([item, count]) => `${String(count)} × ${thing(item)}`));
  return lots.size === 0 ? items : `${items}, lot ${all([...lots])}`;
};
