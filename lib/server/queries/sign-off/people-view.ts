/** Who may sign and who may verify, and in a few words why the others may not (D56). */
import { qualification } from '@/lib/domain/decide/case';
import { mayVerify } from '@/lib/domain/decide/joint-eyes';
import { workFor } from '@/lib/domain/decide/joints';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { Key, PersonId } from '@/lib/domain/base/vocabulary';
import type { PersonView } from '@/lib/wire/views/sign-off';

export const peopleViews = (at: JointCase): readonly PersonView[] => {
  const { joint, facts } = at;
  const crew = crewNow(at);
  return Object.values(facts.people)
    .filter(({ left }) => !left)
    .map(({ id, name }) => {
      const unqualified = lacks(at, id, joint.verifier);
      const hand = mayVerify(at, id) ? null : handWords(at, id);
      const onIt = crew.includes(id);
      return {
        id,
        name,
        initials: initialsOf(name),
        isOnIt: onIt,
        whyNotSign: lacks(at, id, joint.who),
        whyNotVerify: hand ?? unqualified,
        whyNotVerifyAfter: hand ?? (onIt ? 'is on this work' : null) ?? unqualified,
      };
    });
};

/** They will be on record with the final that is signed now, so that none of them verifies it. */
const crewNow = (at: JointCase): readonly PersonId[] => {
  const run = workFor(at, 'final').run ?? workFor(at, 'snug').run;
  return run === null ? [] : (at.car.operations[run.operation]?.crew ?? []);
};

const lacks = (at: JointCase, person: PersonId, key: Key | null): string | null =>
  qualification(at, person, key).length === 0 ? null : `doesn’t hold “${key ?? ''}”`;

const handWords = ({ row }: JointCase, person: PersonId): string =>
  row.marks.some((mark) => mark.by === person && mark.level !== 'verified')
    ? 'signed it, so can’t verify it'
    : 'had a hand in it, so can’t verify it';

/** `Ines Harrow` → `IH`. */
const initialsOf = (name: string): string => {
  const words = name.split(/\s+/).filter((word) => word !== '');
  const ends = words.length > 1 ? [words[0], words.at(-1)] : words;
  return ends.map((word) => (word ?? '').charAt(0).toUpperCase()).join('');
};
