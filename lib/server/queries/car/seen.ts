/** Everything that a car's page is made from, read once; the rest of this folder only words it. */
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import { assess } from '@/lib/domain/assess';
import type { Assessment } from '@/lib/domain/assess';
import type { NameOf } from '@/lib/domain/base/sentences';
import type { Car } from '@/lib/domain/car/rows';
import type { Case } from '@/lib/domain/decide/case';
import type { Facts } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Person, Shop } from '@/lib/domain/shop/rows';
import type { World } from '@/lib/domain/world';
import { tagIn } from '@/lib/server/queries/board/words';
import type { PersonTag } from '@/lib/wire/views/car';
import { wordsFrom } from '@/lib/wire/views/event-words';
import type { Words } from '@/lib/wire/views/event-words';
import { namesOf, withPeople } from '@/lib/wire/views/names';
import { whenWords, withTimes } from '@/lib/wire/views/when';

export interface Given {
  readonly shop: Shop;
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly facts: Facts;
  readonly setting: { readonly name: string; readonly zone: string };
  /** Other cars that are not delivered. */
  readonly floor: readonly Car[];
}

export interface Seen extends Given {
  readonly assessment: Assessment;
  readonly world: World;
  /** What the rules of one car are asked with. */
  readonly at: Case;
  readonly nameOf: NameOf;
  readonly words: Words;
  readonly when: (at: string) => string;
  /** A sentence of the rulebook with its times as the shop writes them. */
  readonly spoken: (sentence: string) => string;
  /** As they are called now; at a moment, as they were called then. */
  readonly tag: (person: PersonId, at?: Instant) => PersonTag;
  /** Who works here now, by name. */
  readonly people: readonly Person[];
}

export const see = (given: Given): Seen => {
  const { shop, car, plan, facts, setting } = given;
  const nameOf = withPeople(namesOf(plan.document), shop.people);
  return {
    ...given,
    assessment: assess(plan, car, facts),
    world: { shop, cars: { [car.id]: car }, stock: {} },
    at: { command: '', facts, car, plan },
    nameOf,
    words: wordsFrom({ nameOf, people: shop.people, stages: plan.stages, signatures: car.signatures }),
    when: whenWords(setting.zone, facts.day),
    spoken: withTimes(setting.zone, facts.day),
    tag: tagIn(shop.people),
    people: Object.values(shop.people)
      .filter(({ left }) => !left)
      .sort((a, b) => a.name.localeCompare(b.name, 'en')),
  };
};
