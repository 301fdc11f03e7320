/** One run of an operation: who is free for it, its hours, its body line by line, its nights, its finish. */
import type { PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import type { CarClaim } from '@/lib/domain/commands';
import type { BodyRequirement, CompiledOperation } from '@/lib/domain/plan/compiled';
import { isQualified } from '@/lib/domain/shop/rows';
import { lineClaims } from '@/seed/acts';
import { DEMO_LEAD, DEMO_OWNER } from '@/seed/demo-shop';
import { momentIn } from './calendar';
import type { Span } from './calendar';
import type { CarWork } from './car-work';

export interface RunOptions {
  /** Who does it, the first hand first; else who of the crew is free. */
  readonly people?: readonly PersonId[];
  /** How many lines of its body are done before it is left running. */
  readonly linesDone?: number;
  /** What happens when the work comes to this joint or check. */
  readonly before?: Readonly<Record<StateKey, () => void>>;
}

/** Its hands and its hours; `day` is the span that they are in. */
interface Shift {
  readonly operation: CompiledOperation;
  readonly people: readonly PersonId[];
  readonly spans: readonly Span[];
  day: number;
}

const QUARTER = 15 * 60_000;
/** Nobody begins in the evening what is done in three hours. */
const SHORT = 180;
/** For so many quarters of an hour a car waits for its own crew, before anybody else is asked. */
const PATIENCE = 10;

export const runOperation = (work: CarWork, key: StateKey, options: RunOptions): void => {
  const shift = shiftFor(work, key, options.people);
  const { operation, people, spans } = shift;
  for (const person of people) work.floor.rota.book(person, spans);
  work.waitUntil(spans[0]?.from ?? 0);
  for (const part of operation.parts)
    if (!isHere(work, part)) work.say(handOf(shift), { type: 'receive-part', part });
  work.say(handOf(shift), { type: 'start-operation', operation: key });
  join(work, shift);
  const lines = operation.body.slice(0, options.linesDone);
  for (const [index, line] of lines.entries()) {
    workUntil(work, shift, momentIn(spans, (index + 1) / (operation.body.length + 1)));
    const thing = thingOf(line) ?? '';
    options.before?.[thing]?.();
    work.asides.get(thing)?.(handOf(shift));
    settleLine(work, handOf(shift), key, line);
  }
  if (options.linesDone !== undefined) return;
  workUntil(work, shift, spans.at(-1)?.to ?? work.now);
  // What a later line has undone (the other side of a pair is due again) is done once more.
  for (const line of lines) settleLine(work, handOf(shift), key, line);
  work.say(handOf(shift), { type: 'finish-operation', operation: key });
  work.lookAll();
};

/** The first hours from now on at which enough people are free for all of it. */
const shiftFor = (work: CarWork, key: StateKey, wanted: readonly PersonId[] | undefined): Shift => {
  const { calendar, rota, driver } = work.floor;
  const operation = driver.plan(work.car).operations.get(key);
  if (operation === undefined) throw new Error(`no operation ${key}`);
  for (let from = work.now, tries = 0; tries < 400; from += QUARTER, tries += 1) {
    const spans = calendar.spans(from, operation.minutes);
    if (spans.length > 1 && operation.minutes <= SHORT) continue;
    const day = calendar.dayOf(from);
    const free = (wanted ?? askedFor(work, operation, tries)).filter((person) => {
      const row = driver.world.shop.people[person];
      return row !== undefined && isQualified(row, operation.who, day) && rota.isFree(person, spans);
    });
    if (free.length >= operation.crew)
      return { operation, people: free.slice(0, operation.crew), spans, day: 0 };
  }
  throw new Error(`nobody has time for ${key} on ${work.car}`);
};

/** The owner lends a hand only where the work asks for somebody with a lead's or an owner's standing. */
const askedFor = (work: CarWork, { who }: CompiledOperation, tries: number): readonly PersonId[] => {
  if (who === 'lead' || who === 'owner') return [...work.everybody(), DEMO_OWNER];
  return tries < PATIENCE ? work.crew : work.everybody();
};

const handOf = ({ people }: Shift): PersonId => people[0] ?? DEMO_LEAD;

const isHere = (work: CarWork, part: string): boolean => {
  const state = work.row.parts[part]?.state;
  return state === 'present' || state === 'fitted';
};

const join = (work: CarWork, { operation, people }: Shift): void => {
  for (const person of people.slice(1))
    work.say(person, { type: 'join-operation', operation: operation.stateKey });
};

/** Time passes until then; at closing time the work is left as it is, and taken up in the morning. */
const workUntil = (work: CarWork, shift: Shift, moment: number): void => {
  const operation = shift.operation.stateKey;
  for (;;) {
    const today = shift.spans[shift.day];
    const tomorrow = shift.spans[shift.day + 1];
    if (today === undefined || tomorrow === undefined || moment <= today.to) break;
    work.waitUntil(today.to);
    work.say(handOf(shift), { type: 'pause-operation', operation, leftAs: leftAs(work, shift) });
    work.waitUntil(tomorrow.from);
    work.say(handOf(shift), { type: 'resume-operation', operation });
    join(work, shift);
    shift.day += 1;
  }
  work.waitUntil(moment);
};

/** How far it has come, as a mechanic leaves it on a card. */
const leftAs = (work: CarWork, { operation }: Shift): string => {
  const next = operation.body.find((line) => claimsOf(work, operation.stateKey, line).length > 0);
  const thing = next === undefined ? null : thingOf(next);
  return thing === null ? 'half way; tools away, safe to walk round' : `safe to walk round; ${thing} is next`;
};

const thingOf = (line: BodyRequirement): string | null => {
  if ('joint' in line) return line.joint;
  if ('check' in line) return line.check;
  return 'part' in line ? line.part : null;
};

const claimsOf = (work: CarWork, key: StateKey, line: BodyRequirement): readonly CarClaim[] =>
  lineClaims(work.site(), { key, number: work.row.operations[key]?.run ?? 1 }, line);

/** Does what one line asks; a timed check is begun, waited for, and then passed. */
export const settleLine = (work: CarWork, by: PersonId, key: StateKey, line: BodyRequirement): void => {
  for (;;) {
    const claims = claimsOf(work, key, line);
    if (claims.length === 0) return;
    const accepted = work.tryAll(by, claims);
    if (accepted === null)
      throw new Error(
        `${work.car} ${key}: nothing of this is accepted from ${by}: ${JSON.stringify(claims)}`,
      );
    if (accepted.type === 'final-joint') witness(work, accepted.joint);
    if (accepted.type !== 'begin-check') return;
    work.pass((work.site().plan.checks.get(accepted.check)?.holdsMs ?? 0) / 60_000);
  }
};

/** What must be seen while it is done is seen at once. */
const witness = (work: CarWork, joint: StateKey): void => {
  const asks = work.site().plan.joints.get(joint)?.verify === 'witnessed';
  if (asks && !work.leave.has(joint)) work.look(joint);
};
