/** Checks. A value outside its limits fails by itself, whoever calls it a pass. */
import { convert, parseUnit } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';
import { parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { waitsForLook } from '@/lib/domain/shop/components';
import type { CheckRow } from '@/lib/domain/car/rows';
import type { CarPayload } from '@/lib/domain/events';
import type { CompiledCheck } from '@/lib/domain/plan/compiled';
import { placeOf, windowText } from '@/lib/domain/plan/window';
import { trustRefusals } from '@/lib/domain/torque/trust';
import { accept, holdsNaming, qualification, signature, undecided, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { openFinding } from './findings';

type Values = Readonly<Record<string, string>>;

export const decideCheck = (
  at: Case,
  claim: CarClaimOf<'begin-check' | 'pass-check' | 'fail-check'>,
): Decision => {
  const check = at.plan.checks.get(claim.check);
  if (check === undefined) return unknown('check', claim.check);
  const row = at.car.checks[check.stateKey];
  switch (claim.type) {
    case 'begin-check':
      return begin(at, check, row, claim.round);
    case 'pass-check':
      return pass(at, check, row, claim);
    case 'fail-check':
      return accept(...failed(at, check, row, claim.values ?? {}, claim.reason));
  }
};

/** The round that a new look belongs to. */
const roundOf = (row: CheckRow | undefined): number => {
  if (row === undefined) return 1;
  return row.status === 'running' || row.status === 'due-again' ? row.round : row.round + 1;
};

const standing = (
  at: Case,
  check: CompiledCheck,
  row: CheckRow | undefined,
  named: number | undefined,
): readonly Refusal[] => {
  const found: Refusal[] = [...qualification(at, at.facts.actor, check.who), ...lookRefusals(at, check, row)];
  const current = roundOf(row);
  if (row?.status === 'clear' || row?.status === 'conceded')
    found.push(refuse('check-already-clear', { check: check.stateKey }));
  else if (named !== undefined && named !== current)
    found.push(refuse('stale-round', { check: check.stateKey, named, current }));
  return found;
};

/** What keeps anybody from looking now: what was decided comes first. The same for a pass and for `assess`. */
export const lookRefusals = (
  at: Case,
  check: CompiledCheck,
  row: CheckRow | undefined,
): readonly Refusal[] => {
  const found: Refusal[] = [...undecided(at, check), ...holdsNaming(at, check.stateKey)];
  // A pass now would be of the piece that is gone; one that waits for a look lies here to be looked at.
  if (
    check.about !== null &&
    at.car.parts[check.about]?.state === 'absent' &&
    !waitsForLook(at.plan, at.car, check.about)
  )
    found.push(refuse('part-absent', { part: check.about }));
  const finding = row?.finding ?? null;
  const open = finding === null ? undefined : at.car.findings[finding];
  if (finding !== null && open?.state === 'undecided')
    found.push(refuse('finding-undecided', { finding, about: open.about.key }));
  const change = open?.change ?? null;
  if (change !== null && at.car.changes[change]?.state === 'asked')
    found.push(refuse('change-undecided', { change }));
  const { operation } = check;
  if (operation !== null && !mayLookIn(at, operation, row))
    found.push(refuse('operation-not-running', { operation }));
  return found;
};

/**
 * A look is part of its operation's work, and so is what was decided after a failed one: both need somebody at it. Once
 * the work is finished a further round may be taken at any time, and a clock that runs may run out.
 */
const mayLookIn = ({ car }: Case, operation: string, row: CheckRow | undefined): boolean => {
  const status = car.operations[operation]?.status;
  return status === 'running' || status === 'finished' || (status === 'paused' && row?.status === 'running');
};

const begin = (
  at: Case,
  check: CompiledCheck,
  row: CheckRow | undefined,
  named: number | undefined,
): Decision =>
  unless(standing(at, check, row, named), () => [
    { type: 'check-begun', check: check.stateKey, round: roundOf(row) },
  ]);

const pass = (
  at: Case,
  check: CompiledCheck,
  row: CheckRow | undefined,
  claim: CarClaimOf<'pass-check'>,
): Decision => {
  const values = claim.values ?? {};
  const outside = outsideLimits(check, values);
  if (outside.length > 0) return accept(...failed(at, check, row, values, outside.join('; ')));
  const refusals = [
    ...standing(at, check, row, claim.round),
    ...valueRefusals(check, values),
    ...timeRefusals(at, check, row),
    ...gauge(at, claim.tool),
  ];
  return unless(refusals, () => [
    {
      type: 'check-passed',
      check: check.stateKey,
      round: roundOf(row),
      values,
      tool: claim.tool ?? null,
      signed: signature('pass-check', check.stateKey, roundOf(row)),
    },
    ...closedByRound(at, row),
  ]);
};

/** The same check, passed in a later round, is what closes its finding. */
const closedByRound = (at: Case, row: CheckRow | undefined): readonly CarPayload[] => {
  const finding = row?.finding ?? null;
  const open = finding === null ? undefined : at.car.findings[finding];
  return finding !== null && open?.state === 'decided'
    ? [{ type: 'finding-closed', finding, because: 'its check is passed' }]
    : [];
};

/** A failure is recorded on any car, in any state. A second one on an open finding joins it, to be decided again. */
const failed = (
  at: Case,
  check: CompiledCheck,
  row: CheckRow | undefined,
  values: Values,
  reason: string,
): readonly CarPayload[] => {
  const round = roundOf(row);
  const earlier = row?.finding ?? null;
  const open = earlier === null ? undefined : at.car.findings[earlier];
  if (earlier !== null && open !== undefined && open.state !== 'closed') {
    const again: CarPayload = { type: 'finding-reopened', finding: earlier, because: reason };
    return [
      { type: 'check-failed', check: check.stateKey, round, values, reason, finding: earlier },
      ...(open.state === 'decided' ? [again] : []),
    ];
  }
  const opened = openFinding(at, aboutOf(at, check), `${check.name}: ${reason}`, {
    key: check.stateKey,
    round,
  });
  return [
    { type: 'check-failed', check: check.stateKey, round, values, reason, finding: opened.finding },
    { ...opened, critical: opened.critical || check.critical },
  ];
};

const aboutOf = (
  { plan }: Case,
  { about, stateKey }: CompiledCheck,
): { kind: 'part' | 'joint' | 'check'; key: string } => {
  if (about !== null && plan.document.parts?.[about] !== undefined) return { kind: 'part', key: about };
  if (about !== null && plan.joints.has(about)) return { kind: 'joint', key: about };
  return { kind: 'check', key: stateKey };
};

/** Every named value that lies outside, in words; a statement answered with no is outside too. */
const outsideLimits = (check: CompiledCheck, values: Values): readonly string[] =>
  check.values.flatMap(({ name, limit }) => {
    const text = values[name];
    if (text === undefined) return [];
    if (limit.kind === 'statement') return isNo(text) ? [`${name} is not: ${limit.text}`] : [];
    const value = inUnit(text, limit.window.unit);
    return value === null || placeOf(limit.window, value) === 'inside'
      ? []
      : [`${name} ${text} is outside ${windowText(limit.window)}`];
  });

const valueRefusals = (check: CompiledCheck, values: Values): readonly Refusal[] => [
  ...check.values.flatMap(({ name, limit }): readonly Refusal[] => {
    const text = values[name];
    const asked = limit.kind === 'statement' ? limit.text : windowText(limit.window);
    if (text === undefined)
      return [refuse('value-missing', { check: check.stateKey, value: name, limit: asked })];
    if (limit.kind === 'statement')
      return isYes(text) || isNo(text)
        ? []
        : [refuse('value-unreadable', { field: name, text, wanted: 'yes or no' })];
    return inUnit(text, limit.window.unit) === null
      ? [refuse('value-unreadable', { field: name, text, wanted: `a number in ${limit.window.unit}` })]
      : [];
  }),
  ...Object.keys(values)
    .filter((name) => !check.values.some((each) => each.name === name))
    .map((name) => refuse('unknown-thing', { what: 'value of the check', key: name })),
];

const isYes = (text: string): boolean => /^(yes|y|ok|true)$/i.test(text.trim());
const isNo = (text: string): boolean => /^(no|n|false)$/i.test(text.trim());

/** `0.12` in the limit's own unit, or with another unit of its kind behind it: `0.005 in`. */
const inUnit = (text: string, unit: Unit): Exact | null => {
  const match = /^\s*([+-]?\d+(?:[.,]\d+)?)\s*(.*)$/.exec(text);
  const value = parseDecimal(match?.[1] ?? '');
  if (value === null) return null;
  const given = match?.[2] ?? '';
  if (given === '') return value;
  const known = parseUnit(given);
  return known === null ? null : convert(value, known, unit);
};

/** It must have held as long as the plan says, by the server's time too. */
const timeRefusals = (at: Case, check: CompiledCheck, row: CheckRow | undefined): readonly Refusal[] => {
  if (check.holdsMs === 0) return [];
  if (row?.status !== 'running' || row.begunAt === null)
    return [refuse('check-not-begun', { check: check.stateKey })];
  const ready = new Date(Date.parse(row.begunAt) + check.holdsMs).toISOString();
  return ready <= at.facts.judgedAt ? [] : [refuse('check-too-short', { check: check.stateKey, ready })];
};

const gauge = ({ facts }: Case, id: string | undefined): readonly Refusal[] => {
  if (id === undefined) return [];
  const tool = facts.tools[id];
  return tool === undefined
    ? [refuse('unknown-thing', { what: 'tool', key: id })]
    : trustRefusals(tool, facts);
};
