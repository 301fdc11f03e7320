/**
 * Who may give a command, and in a few words why the others may not: the rules are asked with everybody as the one
 * who claims it, so that nobody is offered who would be refused (D56).
 */
import { COMMANDS } from '@/lib/domain/authority';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { either } from '@/lib/domain/base/words';
import type { ClaimType } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import type { ActRef, CarClaimType, ThingKind } from '@/lib/wire/views/desk';
import { sampleClaim } from './sample-claims';
import type { Seen } from './seen';

type Whys = Readonly<Record<PersonId, string>>;

/** Makes acts, and keeps the table of who may not: most acts share one. */
export class Acts {
  private readonly seen: Seen;
  private readonly found = new Map<string, number>();
  readonly whys: Whys[] = [];

  constructor(seen: Seen) {
    this.seen = seen;
  }

  act(type: CarClaimType, kind: ThingKind, key: string): ActRef {
    const whys = whysOf(this.seen, type, key);
    const text = JSON.stringify(whys);
    let why = this.found.get(text);
    if (why === undefined) {
      why = this.whys.length;
      this.whys.push(whys);
      this.found.set(text, why);
    }
    return { type, kind, key, why };
  }

  all(types: readonly ClaimType[], kind: ThingKind, key: string): readonly ActRef[] {
    return types.filter(isOnCar).map((type) => this.act(type, kind, key));
  }
}

export const isOnCar = (type: ClaimType): type is CarClaimType => COMMANDS[type].stream === 'car';

const whysOf = (seen: Seen, type: CarClaimType, key: string): Whys => {
  const claim = sampleClaim(seen, type, key);
  const found: Record<PersonId, string> = {};
  for (const { id } of seen.people) {
    const verdict = decide({ ...seen.facts, actor: id }, seen.world, {
      id: '',
      doneAt: seen.facts.judgedAt,
      claim,
    });
    const why = verdict.ok ? null : (verdict.error.map(personal).find((each) => each !== null) ?? null);
    if (why !== null) found[id] = why;
  }
  return found;
};

/** Only what is about the person: all the rest the form shows when it is refused. */
const personal = (refusal: Refusal): string | null => {
  switch (refusal.code) {
    case 'not-allowed':
      return `That is for ${either(refusal.details.roles.map((role) => (role === 'owner' ? 'an owner' : `a ${role}`)))}.`;
    case 'not-qualified':
      return `Does not hold “${refusal.details.qualification}” today.`;
    case 'not-independent':
      return 'Had a hand in it.';
    case 'approver-not-independent':
      return 'Asked for it, or did the work it is about.';
    case 'strike-needs-lead':
      return 'It is another’s, verified, or signed over: a lead strikes it.';
    case 'not-on-it':
      return 'Is not on it: joins first.';
    case 'already-on-it':
      return 'Is on it already.';
    case 'unknown-person':
      return 'Is not on the shop’s books.';
    default:
      return null;
  }
};
