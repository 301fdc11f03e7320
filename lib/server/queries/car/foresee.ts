/** What an act would bring, foreseen by the rules themselves: nothing here knows a consequence. */
import type { CarClaim } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { evolveAll } from '@/lib/domain/evolve';
import type { CarEvent, EventType } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
import type { World } from '@/lib/domain/world';
import { eventLine } from '@/lib/wire/views/event-line';
import type { Seen } from './seen';

/** Nobody: holds every role, so that only the state of things is asked. */
const ANYBODY = {
  id: '?',
  name: 'somebody',
  roles: ['owner', 'lead', 'technician'],
  qualifications: [],
  left: false,
} as const;

const factsFor = (facts: Facts): Facts => ({
  ...facts,
  actor: ANYBODY.id,
  people: { ...facts.people, [ANYBODY.id]: ANYBODY },
});

export interface Foreseen {
  readonly events: readonly CarEvent[];
  readonly after: World;
}

/** Null where it would be refused. */
export const foresee = (seen: Seen, claim: CarClaim): Foreseen | null => {
  const verdict = decide(factsFor(seen.facts), seen.world, { id: '?', doneAt: seen.facts.judgedAt, claim });
  if (!verdict.ok) return null;
  const events = verdict.value.filter((event) => event.stream === 'car');
  return { events, after: evolveAll(seen.world, verdict.value) };
};

/** Everything that follows besides the act itself, one line each. */
export const brings = (seen: Seen, claim: CarClaim, ...own: readonly EventType[]): readonly string[] =>
  (foresee(seen, claim)?.events ?? [])
    .filter((event) => !own.includes(event.type))
    .map((event) => said(seen, event));

const said = (seen: Seen, event: CarEvent): string => {
  const { thing, says } = eventLine(event, seen.words);
  return `${thing} ${says}`.trim();
};
