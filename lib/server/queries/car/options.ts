/** Options as rows: what was chosen, by whom and when, and what each choice changes about this car. */
import type { Instant, Key, PersonId } from '@/lib/domain/base/vocabulary';
import { effectOf } from '@/lib/domain/plan/choice';
import type { OptionEntry } from '@/lib/domain/plan/document';
import type { RowView } from '@/lib/wire/views/car';
import { anchorOf } from '@/lib/wire/views/said-line';
import { dueMark } from './lines';
import type { Seen } from './seen';
import type { Acts } from './who-may';

/** Who chose, from the log; the car's row only says what. */
export type Chosen = Readonly<Record<Key, { readonly by: PersonId; readonly at: Instant }>>;

export const optionRows = (seen: Seen, acts: Acts, chosenBy: Chosen): readonly RowView[] =>
  Object.entries(seen.plan.document.options ?? {}).map(([key, entry]) => {
    const chosen = seen.car.options[key];
    const due = seen.plan.optionsDue.findIndex((keys) => keys.includes(key));
    return {
      id: anchorOf('option', key),
      sign: 'deviation' as const,
      name: entry.name,
      says:
        chosen === undefined
          ? `not chosen yet: ${entry.choices.join(' or ')}`
          : `${chosen}${usualText(entry, chosen)}`,
      who: [],
      keeper: '',
      due: chosen === undefined && due >= 0 ? dueMark(seen, due) : null,
      open: chosen === undefined ? 'Choose' : 'See it',
      sheet: null,
      acts: chosen === undefined ? acts.all(['choose-option'], 'option', key) : [],
      job: null,
      waits: [],
      body: [],
      facts: factsOf(seen, key, entry, chosenBy),
    };
  });

const usualText = ({ usual }: OptionEntry, chosen: string): string =>
  usual === undefined ? '' : chosen === usual ? ', as usual' : `; usual is ${usual}`;

/** Of what was chosen, or of each choice that is left. */
const factsOf = (
  seen: Seen,
  key: Key,
  { choices }: OptionEntry,
  chosenBy: Chosen,
): readonly (readonly [string, string])[] => {
  const chosen = seen.car.options[key];
  const act = chosenBy[key];
  const told =
    act === undefined ? [] : [['Chosen', `${seen.tag(act.by, act.at).name}, ${seen.when(act.at)}`] as const];
  const each = chosen === undefined ? choices : [chosen];
  return [
    ...told,
    ...each.flatMap((choice) => {
      const { brings, leavesOut } = effectOf(seen.plan.document, seen.car.options, key, choice);
      const of = chosen === undefined ? `${choice} ` : '';
      const names = (keys: readonly Key[]): string => keys.map((one) => seen.words.thing(one)).join(', ');
      const lines = [
        ...(brings.length === 0 ? [] : [[capital(`${of}brings`), names(brings)] as const]),
        ...(leavesOut.length === 0 ? [] : [[capital(`${of}leaves out`), names(leavesOut)] as const]),
      ];
      return lines.length > 0 ? lines : [[capital(`${of}changes`), 'nothing in the plan'] as const];
    }),
  ];
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
