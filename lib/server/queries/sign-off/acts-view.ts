/** What can be done with the joint now: the rules are asked, with the best evidence, what they would still refuse. */
import { EVIDENCE, EYES } from '@/lib/domain/base/refusal-groups';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { standingFinal } from '@/lib/domain/car/joint';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import { runningWork } from '@/lib/domain/car/work';
import type { JointAct } from '@/lib/domain/car/work';
import { recheck, verify } from '@/lib/domain/decide/joint-eyes';
import { final, snug, workFor } from '@/lib/domain/decide/joints';
import type { JointCase } from '@/lib/domain/decide/joints';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { RefusalLine } from '@/lib/wire/views/refusal';
import { anchorOf } from '@/lib/wire/views/said-line';
import type { ActView, SignOffView, ToolView } from '@/lib/wire/views/sign-off';
import { bestEvidence } from './tool-view';
import type { Spoken } from './tool-view';

/** Said elsewhere on the sheet: at the tool, at the readings, beside a person's name. */
const SAID_ELSEWHERE: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  ...EVIDENCE,
  ...EYES.filter((code) => code !== 'stale-cycle' && code !== 'hold-stands'),
  'not-qualified',
  'not-independent',
  'unknown-person',
  'verify-method-differs',
  'level-already',
  'joint-not-final',
  'joint-in-doubt',
  'nothing-to-recheck',
]);

type Acts = SignOffView['acts'];

export const actViews = (at: JointCase, slot: boolean, tools: readonly ToolView[], spoken: Spoken): Acts => {
  const on = { car: at.car.id, joint: at.joint.stateKey };
  const refused = {
    snug: snug(at, { type: 'snug-joint', ...on }).refusals,
    final: final(at, { type: 'final-joint', ...on, ...best(at, slot, tools) }).refusals,
    verify: verify(at, { type: 'verify-joint', ...on, method: at.joint.verify ?? 'seen' }).refusals,
    recheck: recheck(at, { type: 'recheck-joint', ...on }).refusals,
  };
  const has = (act: keyof Acts, code: RefusalCode): boolean =>
    refused[act].some((refusal) => refusal.code === code);
  const isFinal = isAtLevel(at.row.level, 'final');
  const asksMore = has('recheck', 'doubt-needs-more');
  const isValued = at.joint.specification.kind !== 'no-value-yet' || at.joint.method === 'sequence';
  const act = (name: keyof Acts, isOffered: boolean, run: RunRef | null): ActView => ({
    isOffered,
    inTheWay: lines(at, refused[name], spoken),
    run: runView(at, run),
  });
  const run = (name: JointAct): RunRef | null => workFor(at, name).run;
  return {
    snug: act('snug', at.row.level === 'open', run('snug')),
    final: act(
      'final',
      isValued && !has('final', 'level-already') && !has('final', 'doubt-needs-more'),
      run('final'),
    ),
    verify: act('verify', at.row.level === 'final' && asksVerifying(at) && at.doubts.length === 0, null),
    recheck: act('recheck', isFinal && !has('recheck', 'nothing-to-recheck') && !asksMore, run('recheck')),
  };
};

const asksVerifying = ({ joint }: JointCase): boolean =>
  joint.dueLevel === 'verified' || joint.verify !== null;

const best = (at: JointCase, slot: boolean, tools: readonly ToolView[]) => {
  const found = tools.find(({ ways }) => ways.some(({ whyNot }) => whyNot.length === 0));
  const way = found?.ways.find(({ whyNot }) => whyNot.length === 0);
  const adapter = way?.adapter === undefined || way.adapter === null ? null : at.facts.adapters[way.adapter];
  return bestEvidence(at, found?.tool ?? null, adapter ?? null, slot);
};

const lines = (at: JointCase, refusals: readonly Refusal[], spoken: Spoken): ActView['inTheWay'] =>
  refusals
    .filter(({ code }) => !SAID_ELSEWHERE.has(code))
    .map((refusal) => spokenLine(withPlace(at, refusal), spoken));

/** Work that must be started is a place to go to: the first of it that is not done. */
const withPlace = ({ car, plan, facts }: JointCase, refusal: Refusal): RefusalLine => {
  const line = refusalLine(car.id, refusal, plan, facts.people);
  const named = refusal.code === 'no-work-names-joint' ? refusal.details.operations : [];
  const operation = named.find((key) => car.operations[key]?.status !== 'finished') ?? named[0];
  if (operation === undefined) return line;
  return {
    ...line,
    href: `/cars/${encodeURIComponent(car.id)}#${anchorOf('operation', operation)}`,
    act: 'Start it',
  };
};

export const spokenLine = (line: RefusalLine, spoken: Spoken): RefusalLine => ({
  ...line,
  says: spoken(line.says),
  clears: spoken(line.clears),
});

const runView = ({ plan }: JointCase, run: RunRef | null): ActView['run'] =>
  run === null
    ? null
    : { operation: run.operation, name: plan.operations.get(run.operation)?.name ?? run.operation };

/** What comes next for this joint. A remedy goes before everything else, the stronger first. */
export const nextAct = (at: JointCase, acts: Acts): SignOffView['next'] => {
  const { row, doubts } = at;
  if (doubts.some(({ remedy }) => remedy === 'renew')) return 'renew';
  if (acts.recheck.isOffered && (doubts.length > 0 || !isRecheckedInRun(at))) return 'recheck';
  const isFinal = isAtLevel(row.level, 'final');
  if (isFinal && acts.final.isOffered && (doubts.length > 0 || !isFinalInRun(at))) return 'final';
  if (acts.verify.isOffered) return 'verify';
  if (isFinal) return 'rest';
  if (row.level === 'open' && !(acts.final.isOffered && isWorkedToFinal(at))) return 'snug';
  return acts.final.isOffered ? 'final' : 'rest';
};

const isWorkedToFinal = (at: JointCase): boolean => workFor(at, 'final').refusals.length === 0;

const isSameRun = (a: RunRef | null, b: RunRef | null): boolean =>
  a !== null && a.operation === b?.operation && a.run === b.run;

const isFinalInRun = (at: JointCase): boolean =>
  isSameRun(runningWork(at.car, at.joint, 'final'), standingFinal(at.row)?.run ?? null);

const isRecheckedInRun = (at: JointCase): boolean => {
  const run = runningWork(at.car, at.joint, 'recheck');
  return at.row.rechecks.some((each) => !each.struck && isSameRun(run, each.run));
};
