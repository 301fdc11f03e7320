/** Commands and what came of them, as entries of the log. Pure: whoever has the rows may make them. */
import { COMMANDS, SIGNS } from '@/lib/domain/authority';
import { sentence } from '@/lib/domain/base/sentences';
import type { NameOf } from '@/lib/domain/base/sentences';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { SignatureRow } from '@/lib/domain/car/rows';
import type { Claim, ClaimType } from '@/lib/domain/commands';
import type { CarEvent } from '@/lib/domain/events';
import { askedWords, withThing } from '@/lib/wire/views/asked-words';
import { eventLine } from '@/lib/wire/views/event-line';
import type { Words } from '@/lib/wire/views/event-words';
import type { EventLine, LogEntry } from '@/lib/wire/views/log';
import { isKeptName } from '@/lib/wire/views/photo';
import type { PhotoRef } from '@/lib/wire/views/photo';
import type { PersonTag } from '@/lib/wire/views/car';

/** One command of a car, as stored, with its events in their order. */
export interface Told {
  readonly id: string;
  readonly type: ClaimType;
  readonly actor: PersonId;
  readonly present: PersonId | null;
  readonly device: string | null;
  readonly receivedAt: Instant;
  readonly refusals: readonly Refusal[] | null;
  /** What was refused; null where it was not, or nobody kept it. */
  readonly claim: Claim | null;
  readonly events: readonly CarEvent[];
}

export interface Telling {
  readonly words: Words;
  readonly nameOf: NameOf;
  /** What the car is called; empty for the shop’s books. */
  readonly car: string;
  readonly spoken: (sentence: string) => string;
  readonly tag: (person: PersonId, at?: Instant) => PersonTag;
  readonly signatures: Readonly<Record<string, SignatureRow>>;
  readonly clock: {
    readonly day: (at: Instant) => string;
    readonly date: (at: Instant) => string;
    readonly time: (at: Instant) => string;
  };
}

export const entryOf = (told: Told, telling: Telling): LogEntry => {
  const { clock, words } = telling;
  const [main, others] = mainOf(told);
  const at = main?.meta.at ?? told.receivedAt;
  const isRefused = told.refusals !== null;
  return {
    id: told.id,
    kind: kindOf(told),
    who: telling.tag(told.actor, at),
    day: clock.day(at),
    date: clock.date(at),
    time: clock.time(at),
    line: main === undefined ? refusedLine(told, telling) : eventLine(main, words),
    brought: isRefused
      ? told.refusals.map((refusal) => telling.spoken(sentence(refusal, telling.nameOf)))
      : others.map((event) =>
          brought(eventLine(event, words), main === undefined ? '' : eventLine(main, words).thing),
        ),
    note: noteOf(told, main, telling),
    struck: struckText(told.id, telling),
    isRefused,
    ...photosIn(told, telling),
  };
};

const photosIn = ({ events }: Told, { words, tag, clock }: Telling): Pick<LogEntry, 'photos'> => {
  const photos = events.flatMap((event): readonly PhotoRef[] =>
    event.type === 'photo-added' && isKeptName(event.hash)
      ? [
          {
            hash: event.hash,
            shows: `${event.of === event.car ? event.car : words.thing(event.of)}, ${event.slot}`,
            taken: `${tag(event.meta.by, event.meta.at).name}, ${clock.day(event.meta.at)} ${clock.time(event.meta.at)}`,
          },
        ]
      : [],
  );
  return photos.length === 0 ? {} : { photos };
};

/** What it brought; its own thing is not named twice. */
const brought = ({ thing, says }: EventLine, own: string): string =>
  thing === own ? says : `${thing} ${says}`.trim();

/** What was claimed comes first: the event that carries the signature, else the first that is no mere means to it. */
const mainOf = ({ events }: Told): readonly [CarEvent | undefined, readonly CarEvent[]] => {
  const main =
    events.find((event) => 'signed' in event) ??
    events.find((event) => event.type !== 'hardware-fitted') ??
    events[0];
  return [main, events.filter((event) => event !== main)];
};

const MOVES: ReadonlySet<ClaimType> = new Set<ClaimType>([
  'start-car',
  'advance-car',
  'send-back',
  'deliver-car',
]);

const kindOf = ({ type, refusals }: Told): LogEntry['kind'] => {
  if (refusals !== null) return 'refused';
  if (type === 'strike-signature') return 'struck';
  if (MOVES.has(type)) return 'moves';
  if (SIGNS.has(type)) return 'signatures';
  return COMMANDS[type].kind === 'warning' ? 'warnings' : 'other';
};

/** What was asked for, and that it was refused: the reasons stand below. */
const refusedLine = ({ type, claim, refusals }: Told, telling: Telling): EventLine => {
  const asked =
    claim === null
      ? withThing(type, subjectIn(type, refusals ?? [], telling.words))
      : askedWords(claim, telling);
  return { sign: 'gclosed', thing: asked, says: 'was refused' };
};

/** Before claims were kept, only the reasons name the thing; and what holds a gate is not what was asked for. */
const subjectIn = (type: ClaimType, refusals: readonly Refusal[], { thing }: Words): string | null => {
  const subject = MOVES.has(type) ? undefined : refusals.map(subjectOf).find((each) => each !== null);
  return subject === undefined ? null : thing(subject);
};

const SUBJECTS = ['joint', 'operation', 'check', 'stopgap', 'part', 'finding', 'change', 'hold'] as const;

const subjectOf = ({ details }: Refusal): string | null => {
  const given: Readonly<Record<string, unknown>> = { ...details };
  for (const name of SUBJECTS) {
    const value = given[name];
    if (typeof value === 'string') return value;
  }
  return null;
};

/** Worth telling about its time: heard late, a clock that was not believed, given on somebody else's session. */
const noteOf = (told: Told, main: CarEvent | undefined, telling: Telling): string | null => {
  const notes: string[] = [];
  if (main !== undefined) {
    const lateMs = Date.parse(main.meta.receivedAt) - Date.parse(main.meta.doneAt);
    if (main.meta.clockDoubted)
      notes.push(`the device said ${telling.clock.time(main.meta.doneAt)}, which was not believed`);
    else if (lateMs > LATE_MS) notes.push(`heard at ${telling.clock.time(main.meta.receivedAt)}`);
  }
  if (told.present !== null) notes.push(`at ${telling.tag(told.present, told.receivedAt).name}’s screen`);
  return notes.length === 0 ? null : notes.join('; ');
};

const LATE_MS = 120_000;

const struckText = (id: string, { signatures, tag, clock }: Telling): string | null => {
  const struck = signatures[id]?.struck ?? null;
  return struck === null
    ? null
    : `struck ${clock.day(struck.at)} ${clock.time(struck.at)}, ${tag(struck.by, struck.at).name}: ${struck.reason}`;
};
