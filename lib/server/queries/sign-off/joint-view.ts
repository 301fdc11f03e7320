/** What a joint is and where it stands. */
import { toDecimalText } from '@/lib/domain/base/exact';
import { placeWords } from '@/lib/domain/base/words';
import { UNTOUCHED_JOINT, fromExactText, standingFinal, toExactText } from '@/lib/domain/car/joint';
import type { Mark } from '@/lib/domain/car/joint-rows';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import type { JointEntry } from '@/lib/domain/plan/document';
import type { Window } from '@/lib/domain/plan/window';
import { aimOf, settingFor } from '@/lib/wire/views/aim';
import { refusalLine } from '@/lib/wire/views/refusal';
import { refuse } from '@/lib/domain/base/refusals';
import type {
  DoubtView,
  JointView,
  MarkView,
  SpecificationView,
  StandingView,
  WindowView,
} from '@/lib/wire/views/sign-off';

/** How things are said on this page. */
export interface Said {
  readonly when: (at: string) => string;
  readonly person: (id: string, at: string) => string;
  readonly spoken: (sentence: string) => string;
}

export const jointView = (at: JointCase, entry: JointEntry | undefined, said: Said): JointView => {
  const { joint, plan, row } = at;
  const { opened } = row;
  return {
    key: joint.stateKey,
    name: joint.name,
    position: positionWords(joint.stateKey),
    operation: operationOf(at),
    dueStage: plan.stages[joint.due]?.name ?? '',
    critical: joint.critical,
    who: joint.who,
    verifier: joint.verifier,
    level: row.level,
    cycle: row.cycle,
    dueLevel: joint.dueLevel,
    verify: joint.verify,
    method: joint.method,
    fasteners: joint.fasteners,
    order: joint.order,
    passes: joint.passes,
    specification: specificationView(joint, entry?.slot ?? false),
    angle: joint.angle === null ? null : windowView(joint.angle),
    sequence: joint.sequence.map(({ step, window }) => ({
      step,
      window: window === null ? null : windowView(window),
    })),
    useOnce: joint.useOnce,
    slot: entry?.slot ?? false,
    asksAdapter: entry?.adapter ?? false,
    firmMeans: entry?.firmMeans ?? null,
    source: entry?.source ?? null,
    thread: entry?.thread ?? null,
    word: fastenerWord(at),
    opened:
      opened === null
        ? null
        : { when: said.when(opened.at), by: said.person(opened.by, opened.at), was: opened.was },
  };
};

const operationOf = ({ joint, plan, car }: JointCase): JointView['operation'] => {
  const running = joint.broughtBy.find(({ operation }) => car.operations[operation]?.status === 'running');
  const key = running?.operation ?? joint.operation;
  const operation = key === null ? undefined : plan.operations.get(key);
  return operation === undefined ? null : { key: operation.stateKey, name: operation.name };
};

export const windowView = (window: Window): WindowView => ({
  low: window.low === null ? null : toExactText(window.low),
  high: window.high === null ? null : toExactText(window.high),
  target: window.target === null ? null : toExactText(window.target),
  unit: window.unit,
  text: window.text,
});

const specificationView = ({ specification }: CompiledJoint, slot: boolean): SpecificationView => {
  if (specification.kind !== 'window') return specification;
  const { window } = specification;
  const aim = aimOf(window, slot);
  return aim === null
    ? { kind: 'no-value-yet' }
    : { kind: 'window', window: windowView(window), aim: toExactText(aim) };
};

const positionWords = (key: string): string | null => {
  const cut = key.indexOf('@');
  if (cut < 0) return null;
  const position = key.slice(cut + 1);
  return placeWords(position) ?? `no. ${position}`;
};

const WORDS = ['nut', 'bolt', 'screw', 'stud', 'plug', 'nipple', 'clamp', 'clip'] as const;

/** What a wrench goes on, from the names of the hardware: the nut before the bolt. */
const fastenerWord = ({ joint, plan }: JointCase): JointView['word'] => {
  const names = joint.hardware
    .filter((line) => line.per === 'fastener' || joint.fasteners === 1)
    .map(({ item }) => plan.document.items?.[item]?.name ?? '');
  const one = WORDS.find((word) => names.some((name) => new RegExp(`\\b${word}\\b`, 'i').test(name)));
  return one === undefined ? { one: 'fastener', many: 'fasteners' } : { one, many: `${one}s` };
};

export const doubtViews = (at: JointCase, { spoken }: Said): readonly DoubtView[] =>
  at.doubts.map(({ cause, remedy, fasteners, because }) => {
    const { says, clears } = refusalLine(
      at.car.id,
      refuse('joint-in-doubt', { joint: at.joint.stateKey, cause, remedy, because }),
      at.plan,
    );
    return { cause, remedy, fasteners, says: spoken(says), clears };
  });

export const markViews = ({ row }: JointCase, said: Said): readonly MarkView[] =>
  row.marks.map(({ signature, level, by, at, struck }) => ({
    signature,
    level,
    by: said.person(by, at),
    when: said.when(at),
    struck,
  }));

/** The final that it stands by, with what the tool showed where that follows from what each fastener got. */
export const standingView = (at: JointCase, said: Said): StandingView | null => {
  const mark = standingFinal(at.row === UNTOUCHED_JOINT ? undefined : at.row);
  if (mark === null) return null;
  const tool = mark.tool === null ? undefined : at.facts.tools[mark.tool];
  return {
    by: said.person(mark.by, mark.at),
    when: said.when(mark.at),
    tool: mark.tool,
    adapter: mark.adapter,
    unit: tool?.unit ?? null,
    readings: at.joint.order.flatMap((fastener) => {
      const delivered = mark.delivered?.[String(fastener)];
      return delivered === undefined ? [] : [{ fastener, shown: shownFor(at, mark, delivered), delivered }];
    }),
    window: mark.window,
  };
};

const shownFor = (at: JointCase, mark: Mark, delivered: string): string | null => {
  const tool = mark.tool === null ? undefined : at.facts.tools[mark.tool];
  const adapter = mark.adapter === null ? null : (at.facts.adapters[mark.adapter] ?? null);
  // With prevailing torque the drag was taken off, and only the log still has it.
  if (tool === undefined || mark.window === null || at.joint.method === 'prevailing') return null;
  const shown = settingFor(fromExactText(delivered), mark.window.unit, tool, adapter);
  return shown === null ? null : toDecimalText(shown, 3);
};
