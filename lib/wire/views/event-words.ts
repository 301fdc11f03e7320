/** What a line of the log is worded with. */
import type { NameOf } from '@/lib/domain/base/sentences';
import { conditionWords, withPlace } from '@/lib/domain/base/words';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { CarEvent, CarPayload } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
import { nameOfPerson } from './names';

/** One that happened, or one that the rules foresee and nobody has claimed yet. */
export type Happening = CarPayload & Partial<Pick<CarEvent, 'meta' | 'car'>>;

export interface Words {
  /** `J-511 Gearbox cross-member`. */
  readonly thing: (key: string) => string;
  /** `engine in`: what is so or not. */
  readonly condition: (key: string) => string;
  /** By name; at a moment, by the name of then. */
  readonly person: (id: PersonId, at?: Instant) => string;
  /** The stage of an index, `Steering`. */
  readonly stage: (index: number) => string;
  /** What a job is, from its id. */
  readonly job: (id: string) => string;
  /** What a signature was given for, from its id: `Final: J-213 Idler bracket`. */
  readonly signature: (id: string) => string;
}

/** `J-110@L Spring front eye, left`: a key with its name behind it, as on a label. */
export const labelled =
  (nameOf: NameOf) =>
  (key: string): string => {
    const name = nameOf(key);
    return name === null || name === key ? key : `${key} ${withPlace(key, name)}`;
  };

export interface WordSources {
  readonly nameOf: NameOf;
  readonly people: Facts['people'];
  readonly stages: readonly { readonly key: string; readonly name: string }[];
  readonly signatures: Readonly<Record<string, { readonly act: string; readonly subject: string }>>;
}

/** What a signature was given for, as it stands before the thing's name. */
const SIGNED: Readonly<Record<string, string>> = {
  'finish-operation': 'Finished:',
  'snug-joint': 'Snug:',
  'final-joint': 'Final:',
  'verify-joint': 'Verified:',
  'recheck-joint': 'Tried again:',
  'pass-check': 'Passed:',
  'remove-stopgap': 'Taken out:',
  'fit-part': 'Fitted:',
};

export const wordsFrom = ({ nameOf, people, stages, signatures }: WordSources): Words => {
  const thing = labelled(nameOf);
  return {
    thing,
    condition: conditionWords,
    person: (id, at) => nameOfPerson(people, id, at),
    stage: (index) => stages[index]?.name ?? `stage ${String(index + 1)}`,
    job: (id) => {
      const [kind = '', key = id] = id.split(':');
      return kind === 'stage' ? (stages.find((stage) => stage.key === key)?.name ?? key) : thing(key);
    },
    signature: (id) => {
      const row = signatures[id];
      return row === undefined ? 'A signature' : `${SIGNED[row.act] ?? row.act} ${thing(row.subject)}`;
    },
  };
};
