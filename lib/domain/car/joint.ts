/** What a joint's row means: its level, who took part in its cycle, and how it is doubted. */
import { compare, exact } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Level, LotId, PersonId, Remedy, ToolId } from '@/lib/domain/base/vocabulary';
import { suspectAt, trueRange } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';
import type { Doubt, JointRow, Mark } from './rows';

/** A joint nobody has touched. */
export const UNTOUCHED_JOINT: JointRow = {
  cycle: 1,
  marks: [],
  doubts: [],
  rechecks: [],
  fasteners: {},
  opened: null,
};

/**
 * The level of a joint: that of its last mark that is not struck (striking one strikes those above it). A retorque
 * puts a verified joint back to final.
 */
export const levelOf = (row: JointRow | undefined): Level => {
  if (row === undefined) return 'open';
  for (let at = row.marks.length - 1; at >= 0; at -= 1) {
    const mark = row.marks[at];
    if (mark !== undefined && !mark.struck) return mark.level;
  }
  return 'open';
};

/** The final that the joint now stands by, if any. */
export const standingFinal = (row: JointRow | undefined): Mark | null => {
  if (row === undefined) return null;
  for (let at = row.marks.length - 1; at >= 0; at -= 1) {
    const mark = row.marks[at];
    if (mark !== undefined && !mark.struck && mark.level === 'final') return mark;
  }
  return null;
};

/** Everyone who had a hand in this cycle, struck marks included: the hand turned all the same (D26). */
export const participantsOf = (row: JointRow | undefined): ReadonlySet<PersonId> => {
  const found = new Set<PersonId>();
  for (const mark of row?.marks ?? []) {
    if (mark.level === 'verified') continue;
    found.add(mark.by);
    for (const person of mark.crew) found.add(person);
  }
  return found;
};

/** What derived doubts are judged against: one changed row is at once true on every car. */
export interface DoubtFacts {
  readonly tools: Readonly<Record<ToolId, Tool>>;
  readonly lots: Readonly<Record<LotId, { readonly quarantined: string | null }>>;
}

const NONE: readonly Doubt[] = [];

/** Every reason not to believe the joint now: those stored with it and those that follow from a tool or a lot (D25). */
export const doubtsOf = (row: JointRow | undefined, facts: DoubtFacts): readonly Doubt[] => {
  if (row === undefined) return NONE;
  const tools = suspectTools(facts.tools);
  const lots = quarantinedLots(facts.lots);
  const fromTool = tools === null ? NONE : toolDoubts(row, facts, tools);
  const fromLots = lots === null ? NONE : lotDoubts(row, facts, lots);
  if (fromTool.length === 0 && fromLots.length === 0) return row.doubts;
  return [...row.doubts, ...fromTool, ...fromLots];
};

/**
 * The few that are in question, or null; asked for every joint of every car, so the answer for the last rows asked
 * about is kept. Rows are never changed in place, so that their identity is their version.
 */
const suspectTools = keptFor((tools: DoubtFacts['tools']) =>
  Object.values(tools).flatMap((tool) => (tool.suspect.length > 0 ? [tool.id] : [])),
);
const quarantinedLots = keptFor((lots: DoubtFacts['lots']) =>
  Object.entries(lots).flatMap(([id, lot]) => (lot.quarantined === null ? [] : [id])),
);

function keptFor<Rows extends object>(
  find: (rows: Rows) => readonly string[],
): (rows: Rows) => ReadonlySet<string> | null {
  let last: Rows | null = null;
  let kept: ReadonlySet<string> | null = null;
  return (rows) => {
    if (rows === last) return kept;
    const found = find(rows);
    kept = found.length === 0 ? null : new Set(found);
    last = rows;
    return kept;
  };
}

const toolDoubts = (row: JointRow, facts: DoubtFacts, suspects: ReadonlySet<string>): readonly Doubt[] => {
  const final = standingFinal(row);
  if (final?.tool === undefined || final.tool === null || !suspects.has(final.tool)) return NONE;
  const tool = facts.tools[final.tool];
  if (tool === undefined) return NONE;
  return suspectAt(tool, final.at).flatMap((interval): readonly Doubt[] => {
    const risk = riskOf(final, (shown) => trueRange(interval, shown));
    if (risk === null) return NONE;
    if (risk === 'recheck' && isReappliedSince(row, final, facts)) return NONE;
    return [
      {
        cause: 'tool-suspect',
        remedy: final.useOnce ? 'renew' : risk,
        fasteners: null,
        because: `tool ${tool.id}: ${interval.reason}`,
        at: interval.from,
      },
    ];
  });
};

/** Re-applying with another, good tool settles that it is not low; it says nothing about too high. Verifying may be that. */
const isReappliedSince = (row: JointRow, final: Mark, facts: DoubtFacts): boolean => {
  const isGood = ({ tool, at, struck }: Pick<Mark, 'tool' | 'at' | 'struck'>): boolean => {
    const found = tool === null ? undefined : facts.tools[tool];
    return !struck && at >= final.at && found !== undefined && suspectAt(found, at).length === 0;
  };
  return row.rechecks.some(isGood) || row.marks.some((mark) => mark.method === 're-applied' && isGood(mark));
};

/** Low: re-apply. High: re-applying proves nothing, so renew. Not measured: both may be. Null: wholly inside. */
const riskOf = (final: Mark, range: (shown: Exact) => { low: Exact; high: Exact } | null): Remedy | null => {
  if (final.delivered === null || final.window === null) return 'renew';
  let risk: Remedy | null = null;
  for (const text of Object.values(final.delivered)) {
    const truth = range(fromExactText(text));
    if (truth === null) return 'renew';
    const { low, high } = final.window;
    if (high !== null && compare(truth.high, fromExactText(high)) > 0) return 'renew';
    if (low !== null && compare(truth.low, fromExactText(low)) < 0) risk = 'recheck';
  }
  return risk;
};

const lotDoubts = (row: JointRow, facts: DoubtFacts, quarantined: ReadonlySet<string>): readonly Doubt[] => {
  const found: Doubt[] = [];
  for (const place in row.fasteners) {
    const items = row.fasteners[place];
    for (const item in items) {
      const fitted = items[item];
      if (fitted === undefined || fitted.lot === null || fitted.spent || !quarantined.has(fitted.lot))
        continue;
      found.push({
        cause: 'lot-quarantined',
        remedy: 'renew',
        fasteners: place === 'joint' ? null : [Number(place)],
        because: `lot ${fitted.lot}: ${facts.lots[fitted.lot]?.quarantined ?? ''}`,
        at: '',
      });
    }
  }
  return found;
};

/** Exact numbers travel in rows and events as `num/den`. */
export const toExactText = (value: Exact): string => `${String(value.num)}/${String(value.den)}`;

/** Reads what `toExactText` wrote. */
export const fromExactText = (text: string): Exact => {
  const [num = '0', den = '1'] = text.split('/');
  return exact(BigInt(num), BigInt(den));
};

/** The remedy that settles all of these doubts, or null where there are none. */
export const strongestRemedy = (doubts: readonly Doubt[]): Remedy | null =>
  doubts.some((doubt) => doubt.remedy === 'renew')
    ? 'renew'
    : doubts.some((doubt) => doubt.remedy === 'retorque')
      ? 'retorque'
      : doubts.length > 0
        ? 'recheck'
        : null;
