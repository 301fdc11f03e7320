/** What can be done with the joint now: the rules are asked, with the best evidence, what they would still refuse. */
import { EVIDENCE, EYES } from '@/lib/domain/base/refusal-groups';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import type { JointAct } from '@/lib/domain/car/work';
import { recheck, verify } from '@/lib/domain/decide/joint-eyes';
import { final, snug, workFor } from '@/lib/domain/decide/joints';
import type { JointCase } from '@/lib/domain/decide/joints';
import { offeredActs } from '@/lib/domain/joint-asks';
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
  const offered = offeredActs(at);
  const act = (name: keyof Acts, run: RunRef | null): ActView => ({
    isOffered: offered[name],
    inTheWay: lines(at, refused[name], spoken),
    run: runView(at, run),
  });
  const run = (name: JointAct): RunRef | null => workFor(at, name).run;
  return {
    snug: act('snug', run('snug')),
    final: act('final', run('final')),
    verify: act('verify', null),
    recheck: act('recheck', run('recheck')),
  };
};

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
