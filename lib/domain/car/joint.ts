/** What a joint's row means: its level, who took part in its cycle, and how it is doubted. */
import { compareProduct } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { suspectWords } from '@/lib/domain/base/words';
import type { Key, Level, LotId, PersonId, Remedy, ToolId } from '@/lib/domain/base/vocabulary';
import { errorFactors, suspectAt } from '@/lib/domain/torque/tool';
import type { SuspectInterval, Tool } from '@/lib/domain/torque/tool';
import type { OffDonor } from './hardware';
import type { Doubt, JointRow, Mark } from './joint-rows';

/** A joint nobody has touched. */
export const UNTOUCHED_JOINT: JointRow = {
  cycle: 1,
  level: 'open',
  tool: null,
  marks: [],
  doubts: [],
  rechecks: [],
  fasteners: {},
  lots: [],
  opened: null,
};

export const levelOf = (row: JointRow | undefined): Level => row?.level ?? 'open';

/**
 * What the marks make of a joint: the level of the last that is not struck (striking one strikes those above it), and
 * the tool of the final it stands by. A retorque puts a verified joint back to final.
 */
export const standingBy = (marks: readonly Mark[]): Pick<JointRow, 'level' | 'tool'> => {
  const standing = marks.filter((mark) => !mark.struck);
  return {
    level: standing.at(-1)?.level ?? 'open',
    tool: standing.filter((mark) => mark.level === 'final').at(-1)?.tool ?? null,
  };
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
  readonly lots: Readonly<
    Record<LotId, { readonly quarantined: string | null; readonly item?: Key; readonly donor?: OffDonor }>
  >;
}

const NONE: readonly Doubt[] = [];

/** Every reason not to believe the joint now: those stored with it and those that follow from a tool or a lot (D25). */
export const doubtsOf = (row: JointRow | undefined, facts: DoubtFacts): readonly Doubt[] => {
  if (row === undefined) return NONE;
  const tools = suspectTools(facts.tools);
  const lots = quarantinedLots(facts.lots);
  if (tools === null && lots === null) return row.doubts;
  const isAsked =
    (tools !== null && row.tool !== null && tools.has(row.tool)) ||
    (lots !== null && hasOneOf(row.lots, lots));
  if (!isAsked) return row.doubts;
  const fromTool = tools === null ? NONE : toolDoubts(row, facts, tools);
  const fromLots = lots === null ? NONE : lotDoubts(row, facts, lots);
  const doubts =
    fromTool.length === 0 && fromLots.length === 0 ? row.doubts : [...row.doubts, ...fromTool, ...fromLots];
  return doubts;
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
  if (row.tool === null || !suspects.has(row.tool)) return NONE;
  const final = standingFinal(row);
  const tool = facts.tools[row.tool];
  if (final === null || tool === undefined) return NONE;
  return suspectAt(tool, final.at).flatMap((interval): readonly Doubt[] => {
    const risk = riskOf(final, interval);
    if (risk === null) return NONE;
    if (risk === 'recheck' && isReappliedSince(row, final, facts)) return NONE;
    return [
      {
        cause: 'tool-suspect',
        remedy: final.useOnce ? 'renew' : risk,
        fasteners: null,
        because: `tool ${tool.id}: ${suspectWords(interval.reason)}`,
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
const riskOf = (final: Mark, interval: SuspectInterval): Remedy | null => {
  const factors = errorFactors(interval);
  if (factors === null || final.extremes === null || final.window === null) return 'renew';
  const { low, high } = final.window;
  const isAbove =
    high !== null &&
    compareProduct(fromExactText(final.extremes.most), factors.most, fromExactText(high)) > 0;
  if (isAbove) return 'renew';
  const isBelow =
    low !== null &&
    compareProduct(fromExactText(final.extremes.least), factors.least, fromExactText(low)) < 0;
  return isBelow ? 'recheck' : null;
};

const hasOneOf = (fitted: readonly LotId[], lots: ReadonlySet<LotId>): boolean => {
  for (const lot of fitted) if (lots.has(lot)) return true;
  return false;
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

/** Reads what `toExactText` wrote, which is in lowest terms already. */
export const fromExactText = (text: string): Exact => {
  const slash = text.indexOf('/');
  return { num: BigInt(text.slice(0, slash)), den: BigInt(text.slice(slash + 1)) };
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
