/** Conditions, options and parts as rows: each has its place, whether or not anything is asked of it now. */
import { waitsForLook } from '@/lib/domain/shop/components';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { PartRow } from '@/lib/domain/car/rows';
import { applies } from '@/lib/domain/plan/resolve';
import { operationFinished } from '@/lib/domain/plan/requirements';
import { takesMore } from '@/lib/domain/shop/trip-rows';
import { unmet } from '@/lib/domain/unmet';
import type { ConditionRow, RowSign, RowView } from '@/lib/wire/views/car';
import type { CarClaimType } from '@/lib/wire/views/desk';
import { anchorOf } from '@/lib/wire/views/said-line';
import { waitLines } from './lines';
import type { Seen } from './seen';
import type { Acts } from './who-may';

const EMPTY = {
  keeper: '',
  job: null,
  who: [],
  due: null,
  sheet: null,
  waits: [],
  body: [],
  facts: [],
} as const;

// ---- conditions ----

export const conditionKeys = ({ plan }: Seen): readonly Key[] => [
  ...new Set([...Object.keys(plan.document.conditions ?? {}), ...plan.setters.keys()]),
];

export const conditionRows = (seen: Seen, acts: Acts): readonly ConditionRow[] =>
  conditionKeys(seen).map((key) => conditionRow(seen, acts, key));

const conditionRow = (seen: Seen, acts: Acts, key: Key): ConditionRow => {
  const row = seen.car.conditions[key];
  const isSo = row?.value === true;
  const setters = seen.plan.setters.get(key) ?? [];
  const isRunning = setters.some(({ stateKey }) => seen.car.operations[stateKey]?.status === 'running');
  const mayBeSaid = !isSo && (setters.length === 0 || isRunning);
  const since = row === undefined ? '' : `, since ${seen.when(row.at)}: ${row.because}`;
  const toDo = isSo
    ? []
    : unmet(
        seen.plan,
        seen.car,
        seen.facts,
        setters.map(({ stateKey }) => operationFinished(stateKey)),
      );
  // Work of that kind is done, and may be done once more.
  const again = isSo || toDo.length > 0 ? [] : setters.filter(({ repeatable }) => repeatable);
  return {
    ...EMPTY,
    id: anchorOf('condition', key),
    sign: conditionSign(key, isSo),
    isSo,
    hasOwnSign: drawnSign(key) !== undefined,
    name: seen.words.condition(key),
    says: `${seen.nameOf(key) ?? ''}${since}`,
    open: isSo ? 'See it' : mayBeSaid ? 'Say so' : 'See what sets it',
    acts: isSo
      ? acts.all(['clear-condition'], 'condition', key)
      : [
          ...(mayBeSaid ? acts.all(['set-condition'], 'condition', key) : []),
          ...again.map(({ stateKey }) => acts.act('start-operation', 'operation', stateKey)),
        ],
    waits: waitLines(seen, toDo),
    facts: [
      ...(row === undefined ? [] : [[isSo ? 'Said by' : 'Ended by', seen.tag(row.by, row.at).name] as const]),
      ...(setters.length === 0
        ? []
        : [['Set by', setters.map(({ stateKey }) => seen.words.thing(stateKey)).join(', ')] as const]),
    ],
  };
};

const CONDITION_SIGNS: readonly (readonly [RegExp, RowSign, RowSign])[] = [
  [/weight|wheels/, 'wheels', 'nowheels'],
  [/engine/, 'engine', 'noengine'],
  [/bled/, 'bled', 'nobled'],
  [/roll/, 'roll', 'noroll'],
  [/fuel/, 'fuel', 'nofuel'],
];

const drawnSign = (key: Key) => CONDITION_SIGNS.find(([words]) => words.test(key));

/** A condition that has no drawing of its own shows a box that is filled or empty. */
export const conditionSign = (key: Key, isSo: boolean): RowSign => {
  const drawn = drawnSign(key);
  return drawn === undefined ? (isSo ? 'passed' : 'due') : isSo ? drawn[1] : drawn[2];
};

// ---- parts ----

/** Those that the chosen options leave on this car. */
export const partKeys = ({ plan, car }: Seen): readonly Key[] =>
  Object.entries(plan.document.parts ?? {})
    .filter(([, { when }]) => {
      const found = applies(when, car.options);
      return !('on' in found) || found.on;
    })
    .map(([key]) => key);

/** `anchors`: a part that is owed has its place among the loose ends. */
export const partRows = (seen: Seen, acts: Acts, anchors: ReadonlySet<string>): readonly RowView[] =>
  partKeys(seen)
    .filter((key) => !anchors.has(anchorOf('part', key)))
    .map((key) => partRow(seen, acts, key));

const PART_WORDS: Readonly<Record<PartRow['state'], string>> = {
  absent: 'is not here',
  present: 'is here and good',
  fitted: 'is fitted',
  taken: 'was taken off',
  out: 'is out to be worked on',
  back: 'is back, not looked over yet',
};

/** How it stands, as the row of a part says it. */
export const partWords = ({ plan, car }: Pick<Seen, 'plan' | 'car'>, key: Key): string =>
  waitsForLook(plan, car, key)
    ? 'is graded reuse, not looked over yet'
    : PART_WORDS[car.parts[key]?.state ?? 'absent'];

/** A part that lies here is as much on its way on to the car as one that is out is on its way here. */
export const partSign = ({ car }: Seen, key: Key): RowView['sign'] => {
  const state = car.parts[key]?.state ?? 'absent';
  if (state === 'fitted') return 'passed';
  return state === 'present' || state === 'out' || state === 'back' ? 'vendor' : 'owed';
};

/** What may be said of one that is not here. */
export const comingActs = ({ car, shop, facts }: Seen, key: Key): readonly CarClaimType[] => {
  const state = car.parts[key]?.state ?? 'absent';
  if (state === 'out') return ['return-parts'];
  const hasTrip = Object.values(shop.trips).some((trip) => takesMore(trip, facts.day));
  return state === 'absent' && hasTrip ? ['receive-part', 'send-parts'] : ['receive-part'];
};

const partRow = (seen: Seen, acts: Acts, key: Key): RowView => {
  const row = seen.car.parts[key];
  const state = row?.state ?? 'absent';
  const fitters = seen.plan.fitters.get(key) ?? [];
  const isRunning = fitters.some(({ stateKey }) => seen.car.operations[stateKey]?.status === 'running');
  const isHere = state === 'present' || state === 'fitted';
  return {
    ...EMPTY,
    id: anchorOf('part', key),
    sign: partSign(seen, key),
    name: seen.words.thing(key),
    says: `${partWords(seen, key)}${row === undefined ? '' : `, ${seen.when(row.at)}`}`,
    open: isHere ? 'See it' : state === 'out' ? 'Count in' : 'Receive',
    acts: isHere
      ? acts.all(
          [...(state === 'present' && isRunning ? ['fit-part' as const] : []), 'take-part'],
          'part',
          key,
        )
      : acts.all(comingActs(seen, key), 'part', key),
    waits:
      state === 'present' && !isRunning
        ? waitLines(
            seen,
            unmet(
              seen.plan,
              seen.car,
              seen.facts,
              fitters.map(({ stateKey }) => operationFinished(stateKey)),
            ),
          )
        : [],
    facts: row !== undefined && row.piece > 1 ? [['Piece', String(row.piece)]] : [],
  };
};
