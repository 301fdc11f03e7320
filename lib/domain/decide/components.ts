/** Components: graded off the donor, sent out to be worked on, back again, here and good. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import { isGivenUp, lastOuting } from '@/lib/domain/car/component-rows';
import { lotRefusals } from '@/lib/domain/car/hardware';
import type { PartRow } from '@/lib/domain/car/rows';
import type { CameBack, ComponentClaim, Graded, ReceivePart } from '@/lib/domain/component-claims';
import type { CarPayload } from '@/lib/domain/events';
import { mayGrade, waitsForLook } from '@/lib/domain/shop/components';
import { awayRefusal } from '@/lib/domain/unmet';
import { accept, lotFactsOf, unknown, unless } from './case';
import type { Case, Decision } from './case';
import { distinct, dueAgain } from './consequences';
import { openFinding } from './findings';

const isPart = ({ plan }: Case, part: Key): boolean => plan.document.parts?.[part] !== undefined;
const stateOf = ({ car }: Case, part: Key): PartRow['state'] => car.parts[part]?.state ?? 'absent';

export const decideComponents = (at: Case, claim: ComponentClaim): Decision => {
  const stranger = claim.parts.find(({ part }) => !isPart(at, part));
  if (stranger !== undefined) return unknown('part', stranger.part);
  const twice = claim.parts.find(
    ({ part }, index) => claim.parts.findIndex((each) => each.part === part) !== index,
  );
  switch (claim.type) {
    case 'grade-parts':
      // Of several parts nobody could say which one a photograph shows.
      if (claim.parts.length > 1 && (claim.photos ?? []).length > 0)
        return unknown('one part that the photographs show', claim.parts.map(({ part }) => part).join(', '));
      return unless(
        twice === undefined
          ? claim.parts.flatMap((graded) => notGraded(at, graded))
          : [refuse('given-before', { what: 'part', key: twice.part })],
        () => claim.parts.flatMap((graded) => gradedNow(at, graded)),
      );
    case 'send-parts': {
      const trip = at.facts.supply.trips[claim.trip];
      if (trip === undefined) return unknown('trip', claim.trip);
      const { id, due } = trip;
      // Whoever names one twice means the last of what they say of it.
      const sent = [...new Map(claim.parts.map((each) => [each.part, each])).values()];
      return accept(
        ...distinct(sent.flatMap(({ part, work }) => wentOut(at, part, { trip: id, work, due }))),
      );
    }
    case 'return-parts':
      return unless(
        twice === undefined
          ? claim.parts.flatMap(({ part }) => notAway(at, part, claim.trip))
          : [refuse('given-before', { what: 'part', key: twice.part })],
        () => cameBack(at, claim.trip, claim.parts),
      );
  }
};

/** A grade is of the donor's own piece, off the car; where it may lie is said at any time. */
const notGraded = (at: Case, { part, grade }: Graded): readonly Refusal[] => {
  const component = at.car.components[part];
  const isSame = grade === undefined || (component?.grade === grade && component.piece === pieceOf(at, part));
  if (isSame || mayGrade(at.car, part)) return [];
  const state = stateOf(at, part);
  return [state === 'absent' ? refuse('part-absent', { part }) : refuse('part-already', { part, state })];
};

const pieceOf = ({ car }: Case, part: Key): number => car.parts[part]?.piece ?? 1;

/** An empty text takes back what was said. */
const told = (said: string | undefined, before: string | null): string | null =>
  said === undefined ? before : said.trim() === '' ? null : said.trim();

const gradedNow = (at: Case, { part, grade, place, serial, note }: Graded): readonly CarPayload[] => {
  const piece = pieceOf(at, part);
  const row = at.car.components[part];
  const before = row?.piece === piece ? row : undefined;
  const state = stateOf(at, part);
  const next = {
    grade: grade ?? before?.grade ?? null,
    place: told(place, before?.place ?? null),
    serial: told(serial, before?.serial ?? null),
    note: told(note, before?.note ?? null),
  };
  const isSame =
    before !== undefined &&
    before.grade === next.grade &&
    before.place === next.place &&
    before.serial === next.serial &&
    before.note === next.note;
  if (isSame) return [];
  const good = at.plan.document.parts?.[part]?.lookOver === true ? 'absent' : 'present';
  const after = grade === undefined || grade === before?.grade ? state : grade === 'reuse' ? good : 'absent';
  return [{ type: 'part-graded', part, piece, ...next, state: after }];
};

/** It went, whatever stands on the car: what fits it there is due again. */
const wentOut = (
  at: Case,
  part: Key,
  where: { readonly trip: string; readonly work: string; readonly due: string },
): readonly CarPayload[] => [
  { type: 'part-sent', part, piece: pieceOf(at, part), ...where },
  ...(at.plan.fitters.get(part) ?? []).flatMap((each) =>
    dueAgain(at, each, `${part} is out on trip ${where.trip}`),
  ),
];

const notAway = (at: Case, part: Key, trip: string): readonly Refusal[] =>
  stateOf(at, part) === 'out' && lastOuting(at.car.components[part])?.trip === trip
    ? []
    : [refuse('part-not-away', { part, trip })];

/** What came back damaged is a finding, as if it had failed a look here. */
const cameBack = (at: Case, trip: string, parts: readonly CameBack[]): readonly CarPayload[] => {
  const damaged = parts.filter(({ how }) => how === 'damaged');
  return parts.flatMap((each): readonly CarPayload[] => {
    const { part, how, note } = each;
    const returned = { type: 'part-returned', part, trip, how, note: note ?? null } as const;
    if (how !== 'damaged') return [returned];
    const text = `came back damaged from trip ${trip}${note === undefined ? '' : `: ${note}`}`;
    const about = { kind: 'part', key: part } as const;
    return [returned, openFinding(at, about, text, null, null, damaged.indexOf(each))];
  });
};

/** Its own from the bench, one off another car, or one that was bought. */
export const receivePart = (at: Case, claim: ReceivePart): Decision => {
  const { part, from, serial, looked, item, lot } = claim;
  if (!isPart(at, part)) return unknown('part', part);
  const state = stateOf(at, part);
  const refusals: Refusal[] = [];
  if (state === 'present' || state === 'fitted') refusals.push(refuse('part-already', { part, state }));
  if (state === 'out') refusals.push(awayRefusal(at.car, part));
  const isOwn = from === undefined && item === undefined;
  const isLook = state === 'back' || (isOwn && waitsForLook(at.plan, at.car, part));
  if (isLook && (looked ?? '').trim() === '')
    refusals.push(refuse('look-not-said', { part, isBack: state === 'back' }));
  if (from !== undefined) refusals.push(...notGiven(at, part, from));
  if (item !== undefined) refusals.push(...notThisItem(at, part, item, lot));
  return unless(refusals, () => [
    {
      type: 'part-received',
      part,
      piece: nextPiece(at, part, !isOwn),
      ...(from === undefined ? {} : { from }),
      ...(serial === undefined ? {} : { serial }),
      ...(looked === undefined || !isLook ? {} : { looked: looked.trim() }),
      ...(item === undefined ? {} : { drawn: [{ item, lot: lot ?? null, quantity: '1' }] }),
    },
  ]);
};

/** Another piece than the donor's, where that one was given up or this one comes from elsewhere. */
const nextPiece = (at: Case, part: Key, isOther: boolean): number => {
  const piece = pieceOf(at, part);
  const component = at.car.components[part];
  if (component?.piece !== piece) return piece;
  return isOther || isGivenUp(component.grade) ? piece + 1 : piece;
};

/** The giver must have said so first: a part is in one place. */
const notGiven = ({ car, facts }: Case, part: Key, from: string): readonly Refusal[] => {
  if (facts.given === null) return [];
  const given = facts.given[from]?.[part];
  const mine = car.components[part];
  const isHadAlready = given !== undefined && mine?.from === from && mine.at >= given.at;
  return given?.takenFor === car.id && !isHadAlready
    ? []
    : [refuse('part-not-given', { part, from, car: car.id })];
};

const notThisItem = (at: Case, part: Key, item: Key, lot: string | undefined): readonly Refusal[] => [
  ...(item === part || at.facts.supply.items[item]?.isPart === part
    ? []
    : [refuse('item-not-this-part', { part, item })]),
  ...(lot === undefined ? [] : lotRefusals(item, lot, lotFactsOf(at))),
];
