/** Who can be given a stage, and what its work asks of them. */
import 'server-only';
import { COMMANDS } from '@/lib/domain/authority';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { isQualified } from '@/lib/domain/shop/rows';
import type { Person, Shop } from '@/lib/domain/shop/rows';
import type { BoardPerson } from '@/lib/wire/views/board';
import { initialsOf } from './words';

/** Everybody who works here, by name; null for those who give no work to anybody. */
export const boardPeople = (shop: Shop, who: Person, day: Day): readonly BoardPerson[] | null => {
  const { roles } = COMMANDS.assign;
  if (roles !== 'anyone' && !who.roles.some((role) => roles.includes(role))) return null;
  return Object.values(shop.people)
    .filter(({ left }) => !left)
    .sort((a, b) => a.name.localeCompare(b.name, 'en'))
    .map((person) => ({
      id: person.id,
      name: person.name,
      initials: initialsOf(person.name),
      holds: [...new Set(person.qualifications.map(({ key }) => key))].filter((key) =>
        isQualified(person, key, day),
      ),
    }));
};

/** What is due by the stage's gate asks for these, whatever the options. */
export const asksOf = (plans: readonly CompiledPlan[], stage: number): readonly string[] => [
  ...new Set(
    plans.flatMap(({ all }) =>
      [...all.operations, ...all.joints, ...all.checks].flatMap(({ due, who }) =>
        due === stage && who !== null ? [who] : [],
      ),
    ),
  ),
];
