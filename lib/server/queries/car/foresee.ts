/** What an act would bring, foreseen by the rules themselves: nothing here knows a consequence. */
import type { Car } from '@/lib/domain/car/rows';
import type { CarClaim } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { evolveAll } from '@/lib/domain/evolve';
import type { CarEvent, EventType } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
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

/** What would happen; null where it would be refused. */
export const foresee = (seen: Seen, claim: CarClaim): readonly CarEvent[] | null => {
  const verdict = decide(factsFor(seen.facts), seen.world, { id: '?', doneAt: seen.facts.judgedAt, claim });
  return verdict.ok ? verdict.value.filter((event) => event.stream === 'car') : null;
};

/** The car after it. */
export const afterwards = (seen: Seen, events: readonly CarEvent[]): Car | undefined =>
  evolveAll(seen.world, events).cars[seen.car.id];

/** Everything that follows besides the act itself, one line each; like things at several places share one. */
export const linesBut = (
  seen: Seen,
  events: readonly CarEvent[] | null,
  ...own: readonly EventType[]
): readonly string[] => {
  const lines = new Map<string, { readonly key: string; readonly says: string; readonly places: string[] }>();
  for (const event of events ?? []) {
    if (own.includes(event.type)) continue;
    const { key, says } = said(seen, event);
    const [plain = '', place] = (key ?? '').split('@');
    const before = lines.get(`${plain} ${says}`);
    if (before === undefined)
      lines.set(`${plain} ${says}`, { key: plain, says, places: place === undefined ? [] : [place] });
    else if (place !== undefined) before.places.push(place);
  }
  return [...lines.values()].map(({ key, says, places }) => {
    if (key === '') return says;
    const at = places.length > 1 ? `, at ${places.join(' ')},` : '';
    return `${seen.words.thing(places.length === 1 ? `${key}@${places[0] ?? ''}` : key)}${at} ${says}`;
  });
};

export const brings = (seen: Seen, claim: CarClaim, ...own: readonly EventType[]): readonly string[] =>
  linesBut(seen, foresee(seen, claim), ...own);

interface Said {
  /** Like lines about one thing at several places are told together; null = the words say it all. */
  readonly key: string | null;
  readonly says: string;
}

/** Its cause stands above these lines and is not said in each. */
const said = (seen: Seen, event: CarEvent): Said => {
  switch (event.type) {
    case 'operation-due-again':
      return { key: event.operation, says: 'is due again' };
    case 'check-due-again':
      return { key: event.check, says: 'is looked at again' };
    case 'joint-doubted':
      return { key: event.joint, says: `is in doubt; ${event.doubt.remedy} clears it` };
    case 'condition-cleared':
      return { key: null, says: `${seen.words.condition(event.condition)} is no longer so` };
    case 'change-asked':
      return { key: null, says: `${event.change} is asked for: somebody else approves it` };
    default: {
      const { thing, says } = eventLine(event, seen.words);
      return { key: null, says: `${thing} ${says}`.trim() };
    }
  }
};
