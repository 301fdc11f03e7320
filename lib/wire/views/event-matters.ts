/** The log's words for everything but operations and joints. */
import type { Drawn, Recount } from '@/lib/domain/shop/stock';
import type { Disposition, HoldScope } from '@/lib/domain/base/vocabulary';
import { donorWords } from '@/lib/domain/car/donor-identity';
import { agreeing, counted } from '@/lib/domain/base/words';
import type { RowSign } from './car';
import type { Happening, Words } from './event-words';
import { componentLine } from './component-line';
import type { EventLine } from './log';

export const line = (sign: RowSign, thing: string, says: string): EventLine => ({ sign, thing, says });

/** The same about a part or a joint, which may be several pieces: `uprights` are fitted. */
export const pieceLine = (sign: RowSign, thing: string, says: string): EventLine =>
  line(sign, thing, agreeing(thing, says));

export const DISPOSITION_WORDS: Readonly<Record<Disposition, string>> = {
  rework: 'rework',
  replace: 'replace',
  'repair-outside': 'repair outside',
  scrap: 'scrap',
  misread: 'misread',
  'use-as-is': 'use as it is',
};

export const SCOPE_WORDS: Readonly<Record<HoldScope, string>> = {
  gate: 'holds the car at its gate',
  work: 'holds all work',
  things: 'holds named things',
};

type OperationOrJoint =
  | 'car-started'
  | 'option-chosen'
  | 'job-assigned'
  | 'note-added'
  | 'photo-added'
  | `operation-${string}`
  | 'hardware-fitted'
  | `joint-${string}`
  | 'mark-struck';

export const matterLine = (
  event: Exclude<Happening, { type: OperationOrJoint }>,
  words: Words,
): EventLine => {
  const { thing, stage } = words;
  switch (event.type) {
    case 'check-begun':
      return line('clock', thing(event.check), `is begun${roundText(event.round)}`);
    case 'check-passed':
      return line('passed', thing(event.check), `is passed${valuesText(event.values)}`);
    case 'check-failed':
      return line('failed', thing(event.check), `failed: ${event.reason}`);
    case 'check-due-again':
      return line('due', thing(event.check), `is due again${roundText(event.round)}: ${event.because}`);
    case 'check-conceded':
      return line('deviation', thing(event.check), `is taken as it is by ${event.change}`);
    case 'stopgap-placed':
      return line(
        'stopgap',
        `${event.id} ${event.what}`,
        `${String(event.quantity)} in place${event.where === null ? '' : `, ${event.where}`}; out by the gate of ${stage(event.outBy)}`,
      );
    case 'stopgap-removed':
      return line('stopgap', event.id, `${String(event.quantity)} came out`);
    case 'stopgap-returned':
      return line('stopgap', event.id, `${String(event.quantity)} count as in again`);
    case 'condition-set':
      return line('passed', words.condition(event.condition), `is so: ${event.because}`);
    case 'condition-cleared':
      return line('gclosed', words.condition(event.condition), `is no longer so: ${event.because}`);
    case 'part-fitted':
      return pieceLine('passed', thing(event.part), 'is fitted');
    case 'part-unfitted':
      return pieceLine('owed', thing(event.part), 'is not fitted after all');
    case 'part-taken':
      return pieceLine(
        'owed',
        thing(event.part),
        `is taken off${event.takenFor === null ? '' : ` for ${event.takenFor}`}: ${event.reason}`,
      );
    case 'part-condemned':
      return pieceLine('owed', thing(event.part), `must be replaced (${event.finding})`);
    case 'finding-opened':
      return line(
        'finding',
        `${event.finding} on ${aboutText(event.about, words)}`,
        `is opened: ${event.text}`,
      );
    case 'finding-decided':
      return line(
        'finding',
        event.finding,
        `is decided: ${DISPOSITION_WORDS[event.disposition]}. ${event.reason}`.trim(),
      );
    case 'finding-closed':
      return line('passed', event.finding, `is closed: ${event.because}`);
    case 'finding-reopened':
      return line('finding', event.finding, `is to be decided again: ${event.because}`);
    case 'change-asked':
      return line('deviation', event.change, `is asked for: ${event.reason}`);
    case 'change-approved':
      return line(
        'deviation',
        event.change,
        event.complete ? 'is approved' : 'has one approval and needs an owner’s too',
      );
    case 'change-declined':
      return line('deviation', event.change, `is declined${event.reason === '' ? '' : `: ${event.reason}`}`);
    case 'wait-ended':
      return line(
        'clock',
        thing(event.operation),
        `need not rest any longer: ${event.change} ends its wait early`,
      );
    case 'hold-placed':
      return line(
        'hold',
        event.hold,
        `${SCOPE_WORDS[event.scope]}${thingsText(event.things, words)}: ${event.reason}`,
      );
    case 'hold-released':
      return line('gopen', event.hold, `is over${event.reason === null ? '' : `: ${event.reason}`}`);
    case 'signature-struck':
      return line('struck', words.signature(event.signature), `is struck: ${event.reason}`);
    case 'gate-passed':
      return line('gopen', `Gate ${String(event.from + 1)}`, gateText(event, words));
    case 'car-sent-back':
      return line(
        'gclosed',
        `Back to ${stage(event.to)}`,
        `${counted(event.stages.length, 'gate')} asked again: ${event.reason}`,
      );
    case 'car-delivered':
      return line('seal', 'The car', 'is delivered');
    case 'kit-picked':
      return line('passed', thing(event.operation), pickedText(event, words));
    case 'kit-emptied':
      return line('hint', thing(event.operation), `gives back from its kit ${takenText(event.lines, words)}`);
    case 'kit-line-reported':
      return line('failed', thing(event.operation), `${FAULT_WORDS[event.what]}: ${thing(event.item)}`);
    case 'donor-recorded':
      return line(
        'hint',
        'The donor',
        donorWords(event) === '' ? 'is not known' : `is recorded: ${donorWords(event)}`,
      );
    case 'part-graded':
    case 'part-sent':
    case 'part-returned':
    case 'part-received':
      return componentLine(event, words);
  }
};

const roundText = (round: number): string => (round === 1 ? '' : `, round ${String(round)}`);

const thingsText = (things: readonly string[], { thing }: Words): string =>
  things.length === 0 ? '' : ` (${things.map(thing).join(', ')})`;

const valuesText = (values: Readonly<Record<string, string>>): string => {
  const measured = Object.entries(values).filter(([, value]) => /\d/.test(value));
  return measured.length === 0 ? '' : `: ${measured.map(([name, value]) => `${name} ${value}`).join(', ')}`;
};

const aboutText = (about: { readonly kind: string; readonly key: string }, { thing }: Words): string =>
  about.kind === 'place' ? about.key : thing(about.key);

const gateText = (event: Extract<Happening, { type: 'gate-passed' }>, { stage }: Words): string => {
  const into = `is passed, into ${stage(event.to)}`;
  return event.overridden.length === 0
    ? `${into}; nothing unmet`
    : `${into}, ${overriddenText(event.overridden)}: ${event.reason ?? ''}`;
};

/** What a lead went past with a reason: there is one thing so far. */
export const overriddenText = (codes: readonly string[]): string =>
  codes.map((code) => (code === 'room-full' ? 'though there was no room' : `past ${code}`)).join(', ');

const FAULT_WORDS = {
  wrong: 'has the wrong part in its kit',
  damaged: 'has a damaged part in its kit',
  missing: 'misses a part in its kit',
} as const;

const pickedText = (
  { lines, emptied = [] }: { readonly lines: readonly Drawn[]; readonly emptied?: readonly Recount[] },
  words: Words,
): string => {
  const down = [...new Set(emptied.map(({ item }) => words.thing(item)))].join(', ');
  const picked = lines.length === 0 ? 'gets nothing in its kit' : `has in its kit ${takenText(lines, words)}`;
  return down === '' ? picked : `${picked}; no more lies in the bin of ${down}`;
};

/** What it used up of known lots. */
export const usedText = (drawn: readonly Drawn[] = [], words: Words): string => {
  const used = drawn.filter(({ lot }) => lot !== null);
  return used.length === 0 ? '' : `; used up: ${takenText(used, words)}`;
};

const takenText = (lines: readonly Drawn[], { thing }: Words): string =>
  lines
    .map(({ item, lot, quantity }) => `${quantity} ${thing(item)}${lot === null ? '' : `, lot ${lot}`}`)
    .join('; ');
