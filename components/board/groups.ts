import type { RefusalLine } from '@/lib/wire/views/said-line';

export interface LineGroup {
  readonly title: string;
  readonly lines: readonly RefusalLine[];
}

type Kind = 'rule' | 'hold' | 'matter' | 'work' | 'joint' | 'check' | 'stopgap' | 'other';

/** What stops everything first, then what must be decided, then work by its kind. */
const TITLES: Readonly<Record<Kind, string>> = {
  rule: 'The move itself',
  hold: 'Holds',
  matter: 'To be decided',
  work: 'Work that is not finished',
  joint: 'Joints',
  check: 'Checks',
  stopgap: 'Stopgaps',
  other: 'Conditions, parts and waits',
};

const KINDS: Readonly<Partial<Record<RefusalLine['code'], Kind>>> = {
  'one-stage-at-a-time': 'rule',
  'room-full': 'rule',
  'last-gate': 'rule',
  'not-allowed': 'rule',
  'unknown-thing': 'rule',
  'car-delivered': 'rule',
  'hold-stands': 'hold',
  'finding-undecided': 'matter',
  'finding-not-closed': 'matter',
  'change-undecided': 'matter',
  'option-undecided': 'matter',
  'operation-unfinished': 'work',
  'joint-below-level': 'joint',
  'joint-in-doubt': 'joint',
  'check-not-clear': 'check',
  'stopgap-in-place': 'stopgap',
};

/** Said of the move as it was asked for, rather than of what stands at the gate. */
export const isOfTheMove = ({ code }: RefusalLine): boolean => KINDS[code] === 'rule';

/** Every line, under the head of its kind. */
export const lineGroups = (lines: readonly RefusalLine[]): readonly LineGroup[] =>
  (Object.keys(TITLES) as Kind[]).flatMap((kind) => {
    const of = lines.filter(({ code }) => (KINDS[code] ?? 'other') === kind);
    return of.length === 0 ? [] : [{ title: TITLES[kind], lines: of }];
  });
