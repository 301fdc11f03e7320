/** Short words of the sheet: numbers as a tool shows them, and what an ask is called over the keys. */
import { subtract, toDecimalText, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Unit } from '@/lib/domain/base/units';
import type { JointView } from '@/lib/wire/views/sign-off';
import type { Ask } from './asks';
import type { Bounds } from './judge';

type Word = JointView['word'];

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** With as many places always, so that figures in a column stand under each other. */
export const fixed = (value: Exact, places: number): string => {
  const text = toDecimalText(value, places);
  const [whole = '', decimals = ''] = text.split('.');
  return places === 0 ? whole : `${whole}.${decimals.padEnd(places, '0')}`;
};

/** One place is what a scale can be read to; a narrow window asks for two. */
export const placesFor = ({ low, high }: Pick<Bounds, 'low' | 'high'>): number =>
  low !== null && high !== null && toNumber(subtract(high, low)) < 1 ? 2 : 1;

/** `Nut 3 reads`: the name of the value that the keys write. */
export const askLabel = (ask: Ask, { word, sequence }: Pick<JointView, 'word' | 'sequence'>): string => {
  switch (ask.kind) {
    case 'setting':
      return 'The tool is set to';
    case 'tap':
      return `${capital(word.one)} ${String(ask.fastener)}`;
    case 'drag':
      return `${capital(word.one)} ${String(ask.fastener)} drags`;
    case 'reading':
      return `${capital(word.one)} ${String(ask.fastener)} reads`;
    case 'angle':
      return `${capital(word.one)} ${String(ask.fastener)} turned on`;
    case 'step':
      return capital(sequence[ask.index]?.step ?? '');
  }
};

/** The unit of what is typed for it. */
export const askUnit = (
  ask: Ask,
  shown: Unit | null,
  { angle, sequence }: Pick<JointView, 'angle' | 'sequence'>,
): string => {
  if (ask.kind === 'angle') return angle?.unit ?? '°';
  if (ask.kind === 'step') return sequence[ask.index]?.window?.unit ?? '';
  return shown ?? '';
};

/** Every fastener of a joint: `the nut`, `both nuts`, `all 4 nuts`. */
export const allOf = (all: number, word: Word): string =>
  all === 1 ? `the ${word.one}` : `${all === 2 ? 'both' : `all ${String(all)}`} ${word.many}`;

/** `nut 3`, `nuts 3 and 4`, and all of them as `all 4 nuts`. */
export const these = (fasteners: readonly number[], all: number, word: Word): string => {
  if (fasteners.length === all) return allOf(all, word);
  if (fasteners.length === 1) return `${word.one} ${String(fasteners[0])}`;
  const last = fasteners.at(-1);
  return `${word.many} ${fasteners.slice(0, -1).join(', ')} and ${String(last)}`;
};

/** What is still missing, in a few words: `nut 3 over, nut 4 to read`. */
export const leftWords = (open: readonly Ask[], over: readonly number[], joint: JointView): string => {
  const { word, fasteners } = joint;
  const of = (kinds: readonly Ask['kind'][]): readonly number[] => [
    ...new Set(open.flatMap((ask) => (kinds.includes(ask.kind) && 'fastener' in ask ? [ask.fastener] : []))),
  ];
  const steps = open.filter(({ kind }) => kind === 'step').length;
  const parts: readonly (readonly [readonly number[], string])[] = [
    [over, 'over'],
    [of(['tap']).filter((each) => !over.includes(each)), 'to come'],
    [of(['reading', 'drag']).filter((each) => !over.includes(each)), 'to read'],
    [of(['angle']).filter((each) => !over.includes(each)), 'to turn on'],
  ];
  const said = parts.flatMap(([list, what]) =>
    list.length === 0 ? [] : [`${these(list, fasteners, word)} ${what}`],
  );
  if (open.some(({ kind }) => kind === 'setting')) said.unshift('the setting');
  if (steps > 0) said.push(steps === 1 ? '1 step left' : `${String(steps)} steps left`);
  return said.join(', ');
};

/** `Ines`, `Ines or Oswin`, `Ines, Oswin or Mara`. */
export const orWords = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;
