/**
 * Who may give a command, and in a few words why the others may not: the rules are asked with everybody as the one
 * who claims it, so that nobody is offered who would be refused (D56).
 */
import { COMMANDS } from '@/lib/domain/authority';
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { either } from '@/lib/domain/base/words';
import type { ClaimType } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { isOfState } from '@/lib/domain/still-refused';
import type { SaidRefusal } from '@/lib/wire/door';
import type { ActRef, CarClaimType, ThingKind } from '@/lib/wire/views/desk';
import { sampleClaim } from './sample-claims';
import type { Seen } from './seen';

type Whys = Readonly<Record<PersonId, string>>;

/** Makes acts, and keeps the tables of who may not and of what stands against them: most acts share one. */
export class Acts {
  private readonly seen: Seen;
  private readonly found = new Map<string, number>();
  private readonly told = new Map<string, number>();
  readonly whys: Whys[] = [];
  readonly reasons: SaidRefusal[] = [];

  constructor(seen: Seen) {
    this.seen = seen;
  }

  act(type: CarClaimType, kind: ThingKind, key: string): ActRef {
    const { whys, refusals } = asked(this.seen, type, key);
    const text = JSON.stringify(whys);
    let why = this.found.get(text);
    if (why === undefined) {
      why = this.whys.length;
      this.whys.push(whys);
      this.found.set(text, why);
    }
    // Of an act that names no thing yet the rules can't say what stands against it.
    const reasons = key === '' ? [] : refusals.map((refusal) => this.reason(refusal));
    return { type, kind, key, why, ...(reasons.length === 0 ? {} : { reasons }) };
  }

  private reason(refusal: Refusal): number {
    const text = JSON.stringify(refusal);
    const before = this.told.get(text);
    if (before !== undefined) return before;
    const { nameOf, spoken } = this.seen;
    this.told.set(text, this.reasons.length);
    return this.reasons.push({ refusal, sentence: spoken(sentence(refusal, nameOf)) }) - 1;
  }

  all(types: readonly ClaimType[], kind: ThingKind, key: string): readonly ActRef[] {
    return types.filter(isOnCar).map((type) => this.act(type, kind, key));
  }
}

export const isOnCar = (type: ClaimType): type is CarClaimType => COMMANDS[type].stream === 'car';

interface Asked {
  readonly whys: Whys;
  /** Why it would be refused whoever gave it. */
  readonly refusals: readonly Refusal[];
}

const asked = (seen: Seen, type: CarClaimType, key: string): Asked => {
  const claim = sampleClaim(seen, type, key);
  const { actor } = seen.facts;
  const whys: Record<PersonId, string> = {};
  const heard = new Map<PersonId, readonly Refusal[]>();
  for (const { id } of seen.people) {
    const verdict = decide({ ...seen.facts, actor: id }, seen.world, {
      id: '',
      doneAt: seen.facts.judgedAt,
      claim,
    });
    const refusals = verdict.ok ? [] : verdict.error;
    const why = refusals.map(personal).find((each) => each !== null) ?? null;
    if (why !== null) whys[id] = why;
    // Whoever may not is told nothing else: how things stand is told to those who may.
    if (!refusals.some(({ code }) => code === 'not-allowed')) heard.set(id, refusals);
  }
  const refusals = heard.get(actor) ?? [...heard.values()][0] ?? [];
  // Another's clock is no matter of the act.
  return {
    whys,
    refusals: refusals.filter(
      (each) => isOfState(each) && (each.code !== 'clock-running' || each.details.person === actor),
    ),
  };
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
