/** Temporary fixings: out only when as many came out as went in. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { CarPayload } from '@/lib/domain/events';
import { accept, nextId, signature, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';

/** A planned stopgap appears when the operation that places it is finished, unless somebody reported it sooner. */
export const plannedPlacing = (at: Case, key: Key): readonly CarPayload[] => {
  const isThere = Object.values(at.car.stopgaps).some(
    (row) => row.stopgap === key && row.removed < row.placed,
  );
  return isThere ? [] : placing(at, key, undefined, undefined);
};

const placing = (
  at: Case,
  key: Key,
  quantity: number | undefined,
  where: string | undefined,
): readonly CarPayload[] => {
  const stopgap = at.plan.stopgaps.get(key);
  if (stopgap === undefined) return [];
  const before = Object.keys(at.car.stopgaps).filter((id) => id === key || id.startsWith(`${key}.`)).length;
  return [
    {
      type: 'stopgap-placed',
      id: before === 0 ? key : `${key}.${String(before + 1)}`,
      stopgap: key,
      what: stopgap.name,
      quantity: quantity ?? stopgap.quantity,
      outBy: stopgap.due,
      slaveIn: stopgap.slaveIn,
      where: where ?? at.plan.document.stopgaps?.[key]?.where ?? null,
    },
  ];
};

export const placeStopgap = (at: Case, claim: CarClaimOf<'place-stopgap'>): Decision => {
  if (claim.stopgap !== undefined) {
    const events = placing(at, claim.stopgap, claim.quantity, claim.where);
    return events.length === 0 ? unknown('stopgap', claim.stopgap) : accept(...events);
  }
  const strange = (claim.slaveIn ?? []).find((joint) => !at.plan.joints.has(joint));
  if (strange !== undefined) return unknown('joint', strange);
  const outBy = claim.outBy === undefined ? at.car.stage : at.plan.stageIndex.get(claim.outBy);
  if (outBy === undefined) return unknown('stage', claim.outBy ?? '');
  return accept({
    type: 'stopgap-placed',
    id: nextId('G-tap', at.car.stopgaps),
    stopgap: null,
    what: claim.what ?? 'stopgap',
    quantity: claim.quantity ?? 1,
    outBy,
    slaveIn: claim.slaveIn ?? [],
    where: claim.where ?? null,
  });
};

export const removeStopgap = (at: Case, claim: CarClaimOf<'remove-stopgap'>): Decision => {
  // A planned key may stand for a later placing of the same stopgap.
  const id =
    Object.entries(at.car.stopgaps).find(
      ([key, row]) => (key === claim.stopgap || row.stopgap === claim.stopgap) && row.removed < row.placed,
    )?.[0] ?? claim.stopgap;
  const row = at.car.stopgaps[id];
  if (row === undefined)
    return at.plan.stopgaps.has(claim.stopgap)
      ? unless(
          [refuse('removed-more-than-placed', { stopgap: id, left: 0, removed: claim.quantity ?? 1 })],
          () => [],
        )
      : unknown('stopgap', claim.stopgap);
  const left = row.placed - row.removed;
  const quantity = claim.quantity ?? left;
  return unless(
    quantity < 1 || quantity > left
      ? [refuse('removed-more-than-placed', { stopgap: id, left, removed: quantity })]
      : [],
    () => [
      {
        type: 'stopgap-removed',
        id,
        quantity,
        signed: signature('remove-stopgap', id, row.removed + quantity),
      },
    ],
  );
};
