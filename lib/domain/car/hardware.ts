/**
 * Hardware of a joint, kept by fastener: what is in, from which lot, how often it has been fitted, and whether it may
 * stay. Quantities are stock's matter; here a bolt in hand is fitted even when the shop has counted none.
 */
import { exact } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CarId, Key, Level, LotId, Reuse } from '@/lib/domain/base/vocabulary';
import type { CompiledJoint, CompiledPlan, HardwareLine } from '@/lib/domain/plan/compiled';
import { isForUsed } from '@/lib/domain/plan/reuse';
import type { FastenerRow, FittedItem, JointRow } from './joint-rows';

/** Hardware that went in otherwise than the plan says by itself. What is not named is as planned, new where it must be. */
export interface FittedClaim {
  readonly item: Key;
  /** The planned item that it stands in for. */
  readonly insteadOf?: Key;
  readonly fasteners?: readonly number[];
  readonly lot?: LotId;
  /** The old piece went back in. */
  readonly reused?: boolean;
}

/** A lot that came off a donor. It was fitted there, so that its pieces go in for the second time at least. */
export interface OffDonor {
  /** The car whose donor it was. */
  readonly car: CarId;
  /** Any car may have it; until then only that one. */
  readonly isShared: boolean;
  /** What was thrown away beside it; decimal text. */
  readonly scrapped: string;
}

/** Is it put aside for a car, and for which? */
export const asideFor = ({ donor }: { readonly donor?: OffDonor }): CarId | null =>
  donor === undefined || donor.isShared ? null : donor.car;

/** The place of what serves a joint as a whole. */
export const WHOLE = 'joint';

/** Fasteners that a line is kept under: each, or the joint as a whole. */
export const placesOf = (joint: CompiledJoint, line: HardwareLine): readonly string[] =>
  line.per === 'joint' ? [WHOLE] : joint.order.map(String);

/** May this piece go in once more? `spent` is what opening, over-torque or a final made of it. */
export const isUsable = (piece: FittedItem, reuse: Reuse): boolean =>
  !piece.spent && (reuse.rule !== 'times' || piece.uses < reuse.times);

export interface Fitting {
  readonly refusals: readonly Refusal[];
  /** The rows of the fasteners that got something. */
  readonly fasteners: Readonly<Record<string, FastenerRow>>;
  /** What came from the shelf for them, and into which place; a piece that went in again is not among it. */
  readonly taken: readonly {
    readonly item: Key;
    readonly lot: LotId | null;
    readonly quantity: Exact;
    readonly place: string;
  }[];
}

/** How much of a line stands in one of its places. */
export const shareOfPlace = (joint: CompiledJoint, line: HardwareLine): Exact =>
  line.per === 'joint' ? exact(line.quantity) : exact(line.quantity, joint.fasteners);

/** Facts about lots that fitting asks for. */
export interface LotFacts {
  readonly lots: Readonly<
    Record<
      LotId,
      {
        readonly item: Key;
        readonly quarantined: string | null;
        readonly expires: string | null;
        readonly donor?: OffDonor;
      }
    >
  >;
  readonly day: string;
  /** The car that it goes into. */
  readonly car: CarId;
  readonly actorIsLead: boolean;
  /** The lot that the box of the running work leaves no doubt about. */
  readonly boxLots?: ReadonlyMap<Key, LotId>;
}

/** What is in after fitting, from what was there, the plan's lines and the claim. */
export const fitHardware = (
  plan: CompiledPlan,
  joint: CompiledJoint,
  row: JointRow,
  claimed: readonly FittedClaim[],
  facts: LotFacts,
): Fitting => {
  const refusals: Refusal[] = claimed.flatMap((claim) => claimRefusals(plan, joint, claim, facts));
  const fasteners: Record<string, Record<Key, FittedItem>> = {};
  const taken: Fitting['taken'][number][] = [];
  /** Lines that a donor's pieces were given for and that want new ones. */
  const wornOut = new Set<HardwareLine>();
  for (const line of joint.hardware)
    for (const place of placesOf(joint, line)) {
      const piece = row.fasteners[place]?.[line.item];
      const isSettled = piece !== undefined && !wasLoosened(piece);
      // Told without naming fasteners, it is for those that were opened or are still empty.
      const claim = claimed.find(
        (each) =>
          standsFor(each) === line.item &&
          covers(each, place) &&
          !(isSettled && each.fasteners === undefined),
      );
      if (isSettled && claim === undefined) continue;
      const usable =
        piece !== undefined && piece.item === (claim?.item ?? piece.item) && isUsable(piece, line.reuse);
      if (claim?.reused === true && !usable)
        refusals.push(
          refuse('hardware-spent', {
            joint: joint.stateKey,
            item: claim.item,
            fastener: place === WHOLE ? null : Number(place),
            rule: ruleText(line.reuse),
          }),
        );
      const isOld =
        usable && (claim === undefined ? line.reuse.rule !== 'once-fitted' : claim.reused === true);
      const lot = lotFor(claim, line.item, facts);
      const isUsed = lot !== null && facts.lots[lot]?.donor !== undefined;
      const fresh = { item: claim?.item ?? line.item, lot, uses: isUsed ? 2 : 1, spent: false };
      if (!isOld && isUsed && !isForUsed(line.reuse)) wornOut.add(line);
      (fasteners[place] ??= { ...row.fasteners[place] })[line.item] = isOld
        ? { ...tightened(piece), uses: piece.uses + 1, lot: claim?.lot ?? piece.lot }
        : fresh;
      if (!isOld)
        taken.push({ item: fresh.item, lot: fresh.lot, quantity: shareOfPlace(joint, line), place });
    }
  for (const { item, reuse } of wornOut)
    refusals.push(refuse('must-be-new', { item, rule: ruleText(reuse), joint: joint.stateKey }));
  return { refusals, fasteners, taken };
};

const lotFor = (claim: FittedClaim | undefined, planned: Key, { boxLots }: LotFacts): LotId | null =>
  claim?.lot ?? boxLots?.get(claim?.item ?? planned) ?? null;

const standsFor = (claim: FittedClaim): Key => claim.insteadOf ?? claim.item;
const covers = (claim: FittedClaim, place: string): boolean =>
  place === WHOLE || claim.fasteners === undefined || claim.fasteners.includes(Number(place));

/** An opened piece waits to go in again; its use is counted then. */
const wasLoosened = (piece: FittedItem): boolean => piece.spent || piece.loose === true;
const tightened = ({ item, lot, uses, spent }: FittedItem): FittedItem => ({ item, lot, uses, spent });

const claimRefusals = (
  plan: CompiledPlan,
  joint: CompiledJoint,
  claim: FittedClaim,
  facts: LotFacts,
): readonly Refusal[] => {
  const at = joint.stateKey;
  const planned = joint.hardware.map((line) => line.item);
  const found: Refusal[] = (claim.fasteners ?? [])
    .filter((fastener) => !joint.order.includes(fastener))
    .map((fastener) => refuse('unknown-thing', { what: 'fastener', key: `${at} no. ${String(fastener)}` }));
  const { insteadOf } = claim;
  if (insteadOf === undefined ? !planned.includes(claim.item) : !planned.includes(insteadOf))
    found.push(wrong(plan, at, claim, planned));
  else if (insteadOf !== undefined) {
    const substitute = plan.document.items?.[insteadOf]?.substitutes?.[claim.item];
    const isAllowed =
      substitute !== undefined &&
      (substitute.onlyIn?.includes(joint.key) ?? true) &&
      !(substitute.notIn?.includes(joint.key) ?? false);
    if (!isAllowed) found.push(wrong(plan, at, claim, planned));
    else if (substitute.asksLead === true && !facts.actorIsLead)
      found.push(refuse('substitute-needs-lead', { joint: at, item: claim.item, instead: insteadOf }));
  }
  if (claim.lot !== undefined) found.push(...lotRefusals(claim.item, claim.lot, facts));
  return found;
};

const wrong = (plan: CompiledPlan, joint: string, claim: FittedClaim, planned: readonly Key[]): Refusal =>
  refuse('hardware-wrong', {
    joint,
    item: claim.item,
    planned,
    substitutes: planned.flatMap((item) => Object.keys(plan.document.items?.[item]?.substitutes ?? {})),
  });

/** A wrong item, a quarantined or an expired lot is hard, whatever the count. */
export const lotRefusals = (
  item: Key,
  id: LotId,
  facts: Pick<LotFacts, 'lots' | 'day' | 'car'>,
): readonly Refusal[] => {
  const lot = facts.lots[id];
  if (lot === undefined) return [refuse('unknown-thing', { what: 'lot', key: id })];
  const found: Refusal[] = [];
  const aside = asideFor(lot);
  if (aside !== null && aside !== facts.car)
    found.push(refuse('lot-of-other-car', { lot: id, item, car: aside }));
  if (lot.item !== item) found.push(refuse('lot-of-other-item', { lot: id, item, holds: lot.item }));
  if (lot.quarantined !== null)
    found.push(refuse('lot-quarantined', { lot: id, item, reason: lot.quarantined }));
  if (lot.expires !== null && facts.day > lot.expires)
    found.push(refuse('lot-expired', { lot: id, item, expired: lot.expires }));
  return found;
};

export const ruleText = (reuse: Reuse): string => {
  switch (reuse.rule) {
    case 'once-fitted':
      return 'used once, spent when fitted';
    case 'once-final':
      return 'used once, spent at final torque';
    case 'times':
      return `may be fitted ${String(reuse.times)} times`;
    case 'always':
      return 'may be used again';
  }
};

/** Which pieces opening these fasteners uses up: only theirs, and what serves the joint as a whole (D23). */
export const spentByOpening = (
  joint: CompiledJoint,
  row: JointRow,
  fasteners: readonly number[],
  reached: Level,
): Readonly<Record<string, readonly Key[]>> => {
  const found: Record<string, Key[]> = {};
  for (const line of joint.hardware)
    for (const place of placesOf(joint, line)) {
      const piece = row.fasteners[place]?.[line.item];
      if (piece === undefined || (place !== WHOLE && !fasteners.includes(Number(place)))) continue;
      if (isSpentNow(line.reuse, piece, reached)) (found[place] ??= []).push(line.item);
    }
  return found;
};

/** Does opening spend it, the joint having reached this level? */
export const isSpentNow = (reuse: Reuse, piece: FittedItem, reached: Level): boolean => {
  switch (reuse.rule) {
    case 'once-fitted':
      return true;
    case 'once-final':
      return reached === 'final' || reached === 'verified';
    case 'times':
      return piece.uses >= reuse.times;
    case 'always':
      return false;
  }
};
