/** What the work to come uses up: hardware and consumables of operations, bought parts, and work that is due once more. */
import { ONE, exact, multiply } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import { isGivenUp } from '@/lib/domain/car/component-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledJoint, CompiledOperation, CompiledPlan } from '@/lib/domain/plan/compiled';
import type { PartEntry } from '@/lib/domain/plan/document';
import { reuseOf } from '@/lib/domain/plan/reuse';
import { parseQuantity } from './item';
import type { CarlessLine, NeedCause } from './need-line';

interface Use {
  readonly item: Key;
  readonly quantity: Exact;
  /** Used up each time the work is done, even if nothing was taken apart. */
  readonly isUsedUp: boolean;
}

export interface WorkNeeds {
  /** By operation. */
  readonly uses: ReadonlyMap<Key, readonly Use[]>;
  /** By operation: the joints whose hardware makes it due again when it is renewed. */
  readonly behind: ReadonlyMap<StateKey, readonly CompiledJoint[]>;
}

const known = new WeakMap<CompiledPlan, WorkNeeds>();

/** Read once for each effective plan. */
export const workNeedsOf = (plan: CompiledPlan): WorkNeeds => {
  const before = known.get(plan);
  if (before !== undefined) return before;
  const uses = new Map<Key, readonly Use[]>();
  for (const key of new Set(plan.all.operations.map((each) => each.key))) {
    const list = usesOf(plan, key);
    if (list.length > 0) uses.set(key, list);
  }
  const behind = new Map<StateKey, CompiledJoint[]>();
  for (const joint of plan.all.joints)
    for (const operation of new Set(joint.hardware.flatMap((line) => line.dueAgain)))
      behind.set(operation, [...(behind.get(operation) ?? []), joint]);
  const found = { uses, behind };
  known.set(plan, found);
  return found;
};

const usesOf = ({ document }: CompiledPlan, key: Key): readonly Use[] => {
  const { hardware = {}, consumables = {} } = document.operations?.[key] ?? {};
  return [
    ...Object.entries(hardware).map(([item, given]): Use => {
      const quantity = exact(typeof given === 'number' ? given : given.quantity);
      return { item, quantity, isUsedUp: reuseOf(document.items, item).rule === 'once-fitted' };
    }),
    ...Object.entries(consumables).flatMap(([item, text]): readonly Use[] => {
      const quantity = parseQuantity(text);
      return quantity === null ? [] : [{ item, quantity, isUsedUp: true }];
    }),
  ];
};

/**
 * How much of its material an operation will still take: all, a share where it is due again for some of its joints, null where
 * it is finished.
 */
export const shareToCome = (plan: CompiledPlan, car: Car, operation: CompiledOperation): Exact | null => {
  const row = car.operations[operation.stateKey];
  if (row?.status === 'finished') return null;
  if (row === undefined || row.run <= 1) return ONE;
  return shareAgain(car, workNeedsOf(plan).behind.get(operation.stateKey) ?? []);
};

/** What an operation takes that is not finished: all of it the first time, what is used up when it is due again. */
export const operationNeed = (
  plan: CompiledPlan,
  car: Car,
  operation: CompiledOperation,
): readonly CarlessLine[] => {
  const row = car.operations[operation.stateKey];
  const needs = workNeedsOf(plan);
  const uses = needs.uses.get(operation.key);
  const part = shareToCome(plan, car, operation);
  if (uses === undefined || part === null) return [];
  const isAgain = row !== undefined && row.run > 1;
  if (!isAgain) return uses.map((use) => lineOf(operation, use, { kind: 'planned' }, ONE));
  const cause: NeedCause = {
    kind: 'again',
    operation: operation.stateKey,
    because: row.why ?? '',
    share: part,
  };
  return uses.filter(({ isUsedUp }) => isUsedUp).map((use) => lineOf(operation, use, cause, part));
};

/** What renewing one line's hardware of a joint will make due again, and use up: its share of the work behind it. */
export const chainedNeed = (
  plan: CompiledPlan,
  car: Car,
  joint: CompiledJoint,
  lines: readonly CarlessLine[],
): readonly CarlessLine[] => {
  const found: CarlessLine[] = [];
  // Two lines of a joint may stand before the same work: it is done once.
  const seen = new Set<StateKey>();
  for (const { item, dueAgain } of joint.hardware) {
    const renewed = lines.find((line) => line.item === item && WILL_RENEW.has(line.cause.kind));
    for (const key of renewed === undefined ? [] : dueAgain) {
      const operation = plan.operations.get(key);
      const { uses, behind } = workNeedsOf(plan);
      if (
        operation === undefined ||
        seen.has(key) ||
        !isDoneBefore(car, joint, key, behind.get(key) ?? [], renewed?.cause.kind)
      )
        continue;
      seen.add(key);
      const share = exact(1, Math.max(1, behind.get(key)?.length ?? 1));
      const cause: NeedCause = {
        kind: 'chained',
        operation: key,
        joint: joint.stateKey,
        behind: item,
        share,
      };
      for (const use of uses.get(operation.key) ?? [])
        if (use.isUsedUp)
          found.push({ ...lineOf(operation, use, cause, share), before: renewed?.before ?? null });
    }
  }
  return found;
};

/**
 * Work that is still to be done once will be done after it, and is counted there. Work that is due again is counted for the
 * joints that were opened, so that one that is still to be opened comes on top.
 */
const isDoneBefore = (
  car: Car,
  joint: CompiledJoint,
  key: StateKey,
  behind: readonly CompiledJoint[],
  cause: NeedCause['kind'] | undefined,
): boolean => {
  const row = car.operations[key];
  if (row?.status === 'finished' || cause === 'reopening') return true;
  const isAgain = row !== undefined && row.run > 1 && behind.some((each) => wasOpened(car, each));
  return isAgain && !wasOpened(car, joint);
};

const wasOpened = (car: Car, { stateKey }: CompiledJoint): boolean =>
  (car.joints[stateKey]?.opened ?? null) !== null;

/** Openings to come. One that has happened has put the work behind it on the list already. */
const WILL_RENEW: ReadonlySet<NeedCause['kind']> = new Set<NeedCause['kind']>(['renew', 'reopening']);

/** One line of ten that was opened needs a tenth of what all ten took; work due again for another reason needs it all. */
const shareAgain = (car: Car, behind: readonly CompiledJoint[]): Exact => {
  const opened = behind.filter((joint) => wasOpened(car, joint));
  return opened.length === 0 ? ONE : exact(opened.length, behind.length);
};

const lineOf = (operation: CompiledOperation, use: Use, cause: NeedCause, share: Exact): CarlessLine => ({
  item: use.item,
  what: 'item',
  quantity: multiply(use.quantity, share),
  cause,
  at: operation.stateKey,
  before: operation.stateKey,
  due: operation.due,
  undecided: operation.undecided,
});

/**
 * Parts that are bought whole: those the plan buys or always replaces, condemned ones, and those taken for another
 * car. `asItems`: those that the plan takes as items of the catalogue.
 */
export const partsNeed = (plan: CompiledPlan, car: Car, asItems: ReadonlySet<Key>): readonly CarlessLine[] =>
  Object.entries(plan.document.parts ?? {}).flatMap(([part, entry]): readonly CarlessLine[] => {
    const fitters = plan.fitters.get(part);
    const cause = fitters === undefined ? null : partCause(car, part, entry, asItems.has(part));
    if (fitters === undefined || cause === null) return [];
    const [next] = fitters.filter(({ stateKey }) => car.operations[stateKey]?.status !== 'finished');
    const [first] = fitters;
    const work = next ?? first;
    if (work === undefined) return [];
    return [
      {
        item: part,
        what: 'part',
        quantity: ONE,
        cause,
        at: work.stateKey,
        before: next?.stateKey ?? null,
        due: work.due,
        undecided: work.undecided,
      },
    ];
  });

const isBought = ({ origin, grade }: PartEntry): boolean =>
  origin === 'bought' || (origin === 'donor' && (grade === 'replace' || grade === 'scrap'));

/** What the plan expects of a donor's part counts until somebody has graded the part. */
const partCause = (car: Car, part: Key, entry: PartEntry, isItem: boolean): NeedCause | null => {
  const row = car.parts[part];
  const component = car.components[part];
  if (row?.state === 'taken') return { kind: 'taken', takenFor: row.takenFor ?? '' };
  if (row !== undefined && row.state !== 'absent') return null;
  const grade = component?.piece === (row?.piece ?? 1) ? component.grade : null;
  if (grade !== null)
    return isGivenUp(grade) && !isItem ? { kind: 'graded', grade, usual: entry.grade ?? null } : null;
  if (row !== undefined && row.piece > 1) return { kind: 'condemned', finding: condemnedBy(car, part) };
  return isBought(entry) && !isItem ? { kind: 'planned' } : null;
};

/** The finding that had it replaced: the last one about it. */
const condemnedBy = (car: Car, part: Key): string | null =>
  Object.entries(car.findings)
    .filter(([, row]) => row.replaced && row.about.kind === 'part' && row.about.key.split('@')[0] === part)
    .at(-1)?.[0] ?? null;
