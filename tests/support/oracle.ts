/**
 * What must be so, told a second time and in the plainest way: from the plan document, the rows and the log, without
 * the compiled plan and without the functions that the rules judge by. It reads the notation of random plans only.
 */
import type { JointRow } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent, Event } from '@/lib/domain/events';
import type { JointEntry, PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Tool } from '@/lib/domain/torque/tool';

type Placed = { readonly key: string; readonly due: number };

const positions = (key: string, repeat: unknown): readonly string[] =>
  repeat === 'sides' ? [`${key}@L`, `${key}@R`] : [key];
const bare = (key: string): string => key.split('@')[0] ?? key;

const stagesOf = (plan: PlanDocument): readonly string[] => Object.keys(plan.stages);

/** `heater=fitted` only: on, off, or nobody has chosen. */
const whenIs = (
  when: string | undefined,
  options: Readonly<Record<string, string>>,
): 'on' | 'off' | 'open' => {
  if (when === undefined) return 'on';
  const [option = '', choice = ''] = when.split('=');
  const chosen = options[option];
  return chosen === undefined ? 'open' : chosen === choice ? 'on' : 'off';
};

const stageOfOperation = (plan: PlanDocument, key: string): number => {
  const entry = plan.operations?.[key];
  return stagesOf(plan).indexOf(entry?.due ?? entry?.stage ?? '');
};

/** The first operation on this car whose body has one of these lines. */
const doneIn = (plan: PlanDocument, options: Car['options'], lines: readonly string[]): string | undefined =>
  Object.entries(plan.operations ?? {}).find(
    ([, entry]) =>
      whenIs(entry.when, options) !== 'off' && (entry.body ?? []).some((line) => lines.includes(line)),
  )?.[0];

const dueOfJoint = (plan: PlanDocument, options: Car['options'], key: string): number => {
  const entry = plan.joints?.[key];
  if (entry?.due !== undefined) return stagesOf(plan).indexOf(entry.due);
  const wanted = entry?.dueLevel === 'snug' ? [`snug ${key}`] : [`final ${key}`];
  const operation = doneIn(plan, options, wanted) ?? doneIn(plan, options, [`snug ${key}`, `final ${key}`]);
  return operation === undefined ? stagesOf(plan).length - 1 : stageOfOperation(plan, operation);
};

const dueOfCheck = (plan: PlanDocument, options: Car['options'], key: string): number => {
  const entry = plan.checks?.[key];
  if (entry?.due !== undefined) return stagesOf(plan).indexOf(entry.due);
  const operation = doneIn(plan, options, [`check ${key}`]);
  return operation === undefined ? stagesOf(plan).length - 1 : stageOfOperation(plan, operation);
};

const RANKS = ['open', 'snug', 'final', 'verified'];
const rank = (level: string): number => RANKS.indexOf(level);

const dueLevel = (entry: JointEntry): string =>
  entry.dueLevel ?? (entry.critical === true || entry.verify !== undefined ? 'verified' : 'final');

const levelIn = (row: JointRow | undefined): string => {
  let level = 'open';
  for (const mark of row?.marks ?? []) if (!mark.struck) level = mark.level;
  return level;
};

// ---- Doubts ----

type Ratio = readonly [top: bigint, bottom: bigint];
const ratio = (text: string): Ratio => {
  const [top = '0', bottom = '1'] = text.split('/');
  return [BigInt(top), BigInt(bottom)];
};
const decimal = (text: string): Ratio => {
  const [whole = '0', places = ''] = text.split('.');
  return [BigInt(whole + places), 10n ** BigInt(places.length)];
};
const times = (a: Ratio, b: Ratio): Ratio => [a[0] * b[0], a[1] * b[1]];
const isBelow = (a: Ratio, b: Ratio): boolean => a[0] * b[1] < b[0] * a[1];
/** What was shown, off by so many percent. */
const offBy = (shown: Ratio, percent: Ratio): Ratio =>
  times(shown, [100n * percent[1] + percent[0], 100n * percent[1]]);
const NOTHING: Ratio = [0n, 1n];

const suspicionsAt = (tool: Tool, at: string): Tool['suspect'] =>
  tool.suspect.filter(({ from, until }) => from <= at && (until === null || at <= until));

/** Why a joint may not be believed, by its final's tool and by what is in it now. */
export const doubtsFromShop = (row: JointRow | undefined, shop: Shop): readonly string[] => {
  const found: string[] = [];
  const final = (row?.marks ?? []).filter((mark) => mark.level === 'final' && !mark.struck).at(-1);
  const tool = shop.tools[final?.tool ?? ''];
  if (row === undefined) return found;
  if (final !== undefined && tool !== undefined)
    for (const { low, high, reason } of suspicionsAt(tool, final.at)) {
      const said = `${tool.id} was ${reason}`;
      const { delivered, window } = final;
      if (low === null || high === null || delivered === null || window === null) {
        found.push(`${said}, by how much nobody knows`);
        continue;
      }
      const down = isBelow(decimal(low), NOTHING) ? decimal(low) : NOTHING;
      const up = isBelow(NOTHING, decimal(high)) ? decimal(high) : NOTHING;
      const values = Object.values(delivered).map(ratio);
      const { low: least, high: most } = window;
      if (most !== null && values.some((value) => isBelow(ratio(most), offBy(value, up))))
        found.push(`${said}, may be high`);
      const isLow = least !== null && values.some((value) => isBelow(offBy(value, down), ratio(least)));
      // A recheck re-applies, and so does who verifies by re-applying.
      const tries = [...row.rechecks, ...row.marks.filter((mark) => mark.method === 're-applied')];
      const isTriedAgain = tries.some((each) => {
        const other = shop.tools[each.tool ?? ''];
        return (
          !each.struck &&
          each.at >= final.at &&
          other !== undefined &&
          suspicionsAt(other, each.at).length === 0
        );
      });
      if (isLow && !isTriedAgain) found.push(`${said}, may be low`);
    }
  for (const [place, items] of Object.entries(row.fasteners))
    for (const [item, piece] of Object.entries(items))
      if (!piece.spent && piece.lot !== null && (shop.lots[piece.lot]?.quarantined ?? null) !== null)
        found.push(`${item} at ${place} is of lot ${piece.lot}`);
  return found;
};

// ---- Gates ----

/** What is due at or before a gate and not met, in words. */
export const dueAndUnmet = (
  plan: PlanDocument,
  car: Car,
  shop: Shop,
  gate: number,
  log: readonly Event[],
): readonly string[] => [
  ...workDue(plan, car, shop, gate),
  ...entryOfNext(plan, car, shop, gate),
  ...mattersDue(plan, car, gate, log),
];

const workDue = (plan: PlanDocument, car: Car, shop: Shop, gate: number): string[] => {
  const found: string[] = [];
  const each = <Entry extends { when?: string; repeat?: unknown }>(
    entries: Readonly<Record<string, Entry>> | undefined,
    dueOf: (key: string) => number,
    judge: (placed: Placed, entry: Entry) => string | null,
  ): void => {
    for (const [key, entry] of Object.entries(entries ?? {})) {
      const due = dueOf(key);
      const is = whenIs(entry.when, car.options);
      if (is === 'off' || due > gate) continue;
      if (is === 'open') found.push(`${key} hangs on an option`);
      else
        for (const stateKey of positions(key, entry.repeat)) {
          const said = judge({ key: stateKey, due }, entry);
          if (said !== null) found.push(said);
        }
    }
  };
  each(
    plan.operations,
    (key) => stageOfOperation(plan, key),
    ({ key }) => (car.operations[key]?.status === 'finished' ? null : `${key} is not finished`),
  );
  each(
    plan.joints,
    (key) => dueOfJoint(plan, car.options, key),
    ({ key }, entry) => {
      const row = car.joints[key];
      if (rank(levelIn(row)) < rank(dueLevel(entry)))
        return `${key} is ${levelIn(row)}, not ${dueLevel(entry)}`;
      const doubts = [...(row?.doubts ?? []).map((doubt) => doubt.because), ...doubtsFromShop(row, shop)];
      return doubts.length === 0 ? null : `${key} is in doubt: ${doubts.join(', ')}`;
    },
  );
  each(
    plan.checks,
    (key) => dueOfCheck(plan, car.options, key),
    ({ key }) =>
      ['clear', 'conceded'].includes(car.checks[key]?.status ?? '') ? null : `${key} is not clear`,
  );
  for (const [id, row] of Object.entries(car.stopgaps)) {
    const due =
      row.stopgap === null ? row.outBy : stagesOf(plan).indexOf(plan.stopgaps?.[row.stopgap]?.outBy ?? '');
    if (due <= gate && row.placed > row.removed) found.push(`${id} is still in`);
  }
  return found;
};

/** Random plans ask only conditions at the door of a stage; a full room counts as well. */
const entryOfNext = (plan: PlanDocument, car: Car, _shop: Shop, gate: number): string[] =>
  (plan.stages[stagesOf(plan)[gate + 1] ?? '']?.entry ?? []).flatMap((text) => {
    const isTrue = car.conditions[text.slice(1)]?.value === true;
    return isTrue === text.startsWith('+') ? [] : [`the door asks ${text}`];
  });

const dueOfAbout = (
  plan: PlanDocument,
  car: Car,
  about: { readonly kind: string; readonly key: string },
  foundIn: number,
): number => {
  switch (about.kind) {
    case 'joint':
      return dueOfJoint(plan, car.options, bare(about.key));
    case 'check':
      return dueOfCheck(plan, car.options, bare(about.key));
    case 'part': {
      const fitters = Object.entries(plan.operations ?? {}).filter(([, entry]) =>
        entry.body?.includes(`fit ${about.key}`),
      );
      return Math.min(...fitters.map(([key]) => stageOfOperation(plan, key)));
    }
    default:
      return foundIn;
  }
};

const mattersDue = (plan: PlanDocument, car: Car, gate: number, log: readonly Event[]): string[] => {
  const found: string[] = [];
  let stage = 0;
  const seenIn = new Map<string, number>();
  for (const event of log) {
    if (event.stream !== 'car' || event.car !== car.id) continue;
    if (event.type === 'gate-passed' || event.type === 'car-sent-back') stage = event.to;
    if (event.type === 'finding-opened') seenIn.set(event.finding, stage);
    if (event.type === 'change-asked') seenIn.set(event.change, stage);
  }
  for (const [id, row] of Object.entries(car.holds))
    if (row.scope === 'gate' && row.releasedBy === null) found.push(`hold ${id} stands`);
  for (const [id, row] of Object.entries(car.findings)) {
    const foundIn = seenIn.get(id) ?? 0;
    const touched = dueOfAbout(plan, car, row.about, foundIn);
    if (row.state === 'undecided' && Math.min(touched, foundIn) <= gate)
      found.push(`finding ${id} is undecided`);
    if (row.state === 'decided' && touched <= gate) found.push(`finding ${id} is not closed`);
  }
  for (const [id, row] of Object.entries(car.changes)) {
    const [edit] = row.edits;
    if (row.state !== 'asked' || edit === undefined) continue;
    const askedIn = seenIn.get(id) ?? 0;
    const about = 'finding' in edit ? car.findings[edit.finding]?.about : undefined;
    const touched =
      'wait' in edit
        ? stageOfOperation(plan, bare(edit.wait))
        : about === undefined
          ? 0
          : dueOfAbout(plan, car, about, seenIn.get(edit.finding) ?? 0);
    // A concession is due when its finding was, and that one was never due later than the gate it was found at.
    const capped = Math.min(touched, 'finding' in edit ? (seenIn.get(edit.finding) ?? 0) : askedIn);
    if (capped <= gate) found.push(`change ${id} is undecided`);
  }
  return found;
};

// ---- Cycles, from the log alone ----

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

export interface Cycle {
  readonly number: number;
  /** An opening after something was done did not raise the number. */
  readonly isReused: boolean;
  /** Signatures given in it. */
  readonly marks: readonly Of<'joint-marked'>[];
  readonly hands: ReadonlySet<string>;
}

/**
 * The cycle that a joint is in, and everyone who had a hand in it (D26): who fitted, snugged or torqued it, and who
 * was on the runs under which that was done, whenever they came to it.
 */
export const cycleOf = (log: readonly Event[], car: string, joint: string): Cycle => {
  let number = 1;
  let isReused = false;
  let marks: Of<'joint-marked'>[] = [];
  let touched = false;
  let hands = new Set<string>();
  let runs = new Set<string>();
  const crews = new Map<string, Set<string>>();
  for (const event of log) {
    if (event.stream !== 'car' || event.car !== car) continue;
    switch (event.type) {
      case 'operation-started':
      case 'operation-joined':
      case 'operation-resumed': {
        const run = `${event.operation} ${String(event.run)}`;
        crews.set(run, (crews.get(run) ?? new Set<string>()).add(event.meta.by));
        break;
      }
      case 'joint-opened':
        if (event.joint !== joint) break;
        if (touched && event.cycle <= number) isReused = true;
        number = event.cycle;
        touched = false;
        marks = [];
        hands = new Set();
        runs = new Set();
        break;
      case 'hardware-fitted':
        if (event.joint === joint) hands.add(event.meta.by);
        break;
      case 'joint-marked':
        if (event.joint !== joint) break;
        touched = true;
        marks.push(event);
        if (event.mark.level === 'verified') break;
        hands.add(event.meta.by);
        if (event.mark.run !== null) runs.add(`${event.mark.run.operation} ${String(event.mark.run.run)}`);
        break;
      case 'joint-rechecked':
        if (event.joint === joint) touched = true;
        break;
      default:
    }
  }
  for (const run of runs) for (const person of crews.get(run) ?? []) hands.add(person);
  return { number, isReused, marks, hands };
};

/** What is in a joint now, by lot, from the log alone. */
export const lotsIn = (log: readonly Event[], car: string, joint: string): ReadonlyMap<string, string> => {
  const lots = new Map<string, string>();
  for (const event of log) {
    if (event.stream !== 'car' || event.car !== car) continue;
    if (event.type === 'hardware-fitted' && event.joint === joint)
      for (const [place, items] of Object.entries(event.fasteners))
        for (const [item, piece] of Object.entries(items))
          if (piece.lot === null) lots.delete(`${item} at ${place}`);
          else lots.set(`${item} at ${place}`, piece.lot);
    if (event.type === 'joint-opened' && event.joint === joint)
      for (const [place, items] of Object.entries(event.spent))
        for (const item of items) lots.delete(`${item} at ${place}`);
  }
  return lots;
};

/** Why a joint that counts at final or verified should not. */
export const whyNotBelieved = (
  log: readonly Event[],
  car: Car,
  shop: Shop,
  joint: string,
): readonly string[] => {
  const row = car.joints[joint];
  const { number, isReused, marks } = cycleOf(log, car.id, joint);
  const struck = new Set<string>();
  for (const event of log)
    if (
      event.stream === 'car' &&
      event.car === car.id &&
      event.type === 'mark-struck' &&
      event.joint === joint
    )
      for (const signature of event.signatures) struck.add(signature);
  const finals = marks.filter(({ mark }) => mark.level === 'final' && !struck.has(mark.signature));
  const found: string[] = [];
  if (finals.length === 0) found.push(`no final of cycle ${String(number)}`);
  for (const mark of row?.marks ?? [])
    if (!marks.some((event) => event.mark.signature === mark.signature))
      found.push(`the ${mark.level} of ${mark.signature} is of another cycle`);
  if (isReused || marks.some((event) => event.cycle !== number)) found.push('its cycles are mixed up');
  if (row !== undefined && row.cycle !== number)
    found.push(`its row says cycle ${String(row.cycle)}, not ${String(number)}`);
  for (const [place, lot] of lotsIn(log, car.id, joint))
    if ((shop.lots[lot]?.quarantined ?? null) !== null) found.push(`${place} is of lot ${lot}`);
  return [...found, ...doubtsFromShop(row, shop)];
};
