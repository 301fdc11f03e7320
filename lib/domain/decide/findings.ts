/** Findings: opened by bad news, decided by a lead, closed when their work is done. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { participantsOf } from '@/lib/domain/car/joint';
import type { FindingRow } from '@/lib/domain/car/rows';
import type { CarPayload } from '@/lib/domain/events';
import { planKey } from '@/lib/domain/plan/positions';
import { belowLevel, notClear } from '@/lib/domain/unmet';
import { accept, nextId, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { checkDueAgain, distinct, dueAgain } from './consequences';

type About = FindingRow['about'];
type Opened = Extract<CarPayload, { type: 'finding-opened' }>;

/** The event that opens a finding, after as many of the same command as stand `before` it; where it touches nothing in the plan it is about the stage the car stands in (D30). */
export const openFinding = (
  at: Case,
  about: About,
  text: string,
  check: FindingRow['check'],
  cycle: number | null = null,
  before = 0,
): Opened => {
  const touched = dueOf(at, about);
  return {
    type: 'finding-opened',
    finding: nextId('F', at.car.findings, before),
    about,
    text,
    check,
    cycle,
    due: Math.min(touched, at.car.stage),
    workDue: touched,
    critical: isCritical(at, about),
  };
};

const dueOf = ({ plan, car }: Case, about: About): number => {
  switch (about.kind) {
    case 'joint':
      return plan.joints.get(about.key)?.due ?? car.stage;
    case 'check':
      return plan.checks.get(about.key)?.due ?? car.stage;
    case 'part': {
      const fitters = plan.fitters.get(planKey(about.key)) ?? [];
      return fitters.length === 0 ? car.stage : Math.min(...fitters.map((each) => each.due));
    }
    case 'place':
      return car.stage;
  }
};

const isCritical = ({ plan }: Case, about: About): boolean => {
  switch (about.kind) {
    case 'joint':
      return plan.joints.get(about.key)?.critical ?? false;
    case 'check':
      return plan.checks.get(about.key)?.critical ?? false;
    case 'part':
      return plan.document.parts?.[planKey(about.key)]?.critical ?? false;
    case 'place':
      return false;
  }
};

const exists = ({ plan }: Case, about: About): boolean => {
  switch (about.kind) {
    case 'joint':
      return plan.joints.has(about.key);
    case 'check':
      return plan.checks.has(about.key);
    case 'part':
      return plan.document.parts?.[planKey(about.key)] !== undefined;
    case 'place':
      return true;
  }
};

export const reportFinding = (at: Case, claim: CarClaimOf<'report-finding'>): Decision =>
  exists(at, claim.about)
    ? accept(openFinding(at, claim.about, claim.text, null))
    : unknown(claim.about.kind, claim.about.key);

export const decideFinding = (at: Case, claim: CarClaimOf<'decide-finding'>): Decision => {
  const { finding: id, disposition, reason } = claim;
  const row = at.car.findings[id];
  if (row === undefined) return unknown('finding', id);
  const check = row.check === null ? undefined : at.plan.checks.get(row.check.key);
  const refusals: Refusal[] = [];
  if (row.state !== 'undecided') refusals.push(refuse('finding-already', { finding: id, state: row.state }));
  if (disposition === 'use-as-is' && check?.neverConcede === true)
    refusals.push(refuse('never-concede', { check: check.stateKey }));
  const change = disposition === 'use-as-is' ? nextId('D', at.car.changes) : null;
  return unless(refusals, () => [
    { type: 'finding-decided', finding: id, disposition, change, reason },
    ...(change === null ? [] : [concessionAsked(at, id, row, change, reason)]),
    ...consequences(at, id, row, claim),
  ]);
};

/** Use as is departs from the plan, so it is a change: asked here, approved by somebody else. */
const concessionAsked = (
  at: Case,
  finding: string,
  row: FindingRow,
  change: string,
  reason: string,
): CarPayload => ({
  type: 'change-asked',
  change,
  edits: [{ kind: 'accept', finding }],
  reason,
  due: row.due,
  critical: row.critical,
  performers: performersOf(at, row),
});

/** Who did the work that the finding is about. */
const performersOf = ({ plan, car }: Case, row: FindingRow): readonly string[] => {
  const crews = (operations: readonly (string | null | undefined)[]): readonly string[] =>
    operations.flatMap((key) => car.operations[key ?? '']?.crew ?? []);
  const ofCheck = row.check === null ? [] : crews([plan.checks.get(row.check.key)?.operation]);
  const ofThing =
    row.about.kind === 'joint'
      ? [...participantsOf(car.joints[row.about.key])]
      : row.about.kind === 'part'
        ? crews((plan.fitters.get(planKey(row.about.key)) ?? []).map((each) => each.stateKey))
        : [];
  return [...new Set([...ofCheck, ...ofThing])];
};

const consequences = (
  at: Case,
  id: string,
  row: FindingRow,
  { disposition }: CarClaimOf<'decide-finding'>,
): readonly CarPayload[] => {
  switch (disposition) {
    case 'misread':
      return [
        { type: 'finding-closed', finding: id, because: 'misread: to be measured again' },
        ...(row.check === null
          ? []
          : [
              {
                type: 'check-due-again' as const,
                check: row.check.key,
                round: row.check.round + 1,
                because: `${id} was a misreading`,
              },
            ]),
      ];
    case 'replace':
    case 'scrap':
      return distinct(replaced(at, id, row));
    case 'rework':
    case 'repair-outside':
    case 'use-as-is':
      return [];
  }
};

/** A replaced part is gone: what fits it and what was made on it is due again, and the other side of a pair. */
const replaced = (at: Case, id: string, row: FindingRow): readonly CarPayload[] => {
  const pair = row.check === null ? [] : pairOf(at, row.check.key);
  const others = pair.flatMap((key) => checkDueAgain(at, key, `${id}: replaced in pairs`));
  if (row.about.kind !== 'part') return others;
  const part = planKey(row.about.key);
  const because = `${part} is replaced (${id})`;
  const again = [...(at.plan.fitters.get(part) ?? []), ...(at.plan.madeOn.get(part) ?? [])];
  return [
    { type: 'part-condemned', part, piece: (at.car.parts[part]?.piece ?? 1) + 1, finding: id },
    ...again.flatMap((operation) => dueAgain(at, operation, because)),
    ...others,
  ];
};

const pairOf = ({ plan }: Case, key: string): readonly string[] => {
  const check = plan.checks.get(key);
  if (check?.pair !== true) return [];
  return [...plan.checks.values()]
    .filter((each) => each.key === check.key && each.stateKey !== key)
    .map((each) => each.stateKey);
};

export const closeFinding = (at: Case, claim: CarClaimOf<'close-finding'>): Decision => {
  const { finding: id } = claim;
  const row = at.car.findings[id];
  if (row === undefined) return unknown('finding', id);
  return unless(closingRefusals(at, id, row), () => [
    { type: 'finding-closed', finding: id, because: claim.text ?? 'its work is done' },
  ]);
};

/** What a finding's work still lacks; asked by hand and by `assess`. */
export const closingRefusals = (at: Case, id: string, row: FindingRow): readonly Refusal[] => {
  if (row.state === 'closed') return [refuse('finding-already', { finding: id, state: 'closed' })];
  if (row.state === 'undecided') return [refuse('finding-undecided', { finding: id, about: row.about.key })];
  const found: (Refusal | null)[] = [];
  if (row.change !== null && at.car.changes[row.change]?.state === 'asked')
    found.push(refuse('change-undecided', { change: row.change }));
  if (row.check !== null) found.push(notClear(at.car, row.check.key));
  const joint = row.about.kind === 'joint' ? at.plan.joints.get(row.about.key) : undefined;
  if (joint !== undefined)
    found.push(
      belowLevel(at.car, at.facts, joint.stateKey, joint.dueLevel === 'verified' ? 'final' : joint.dueLevel),
    );
  if (row.about.kind === 'part' && at.car.parts[planKey(row.about.key)]?.state === 'absent')
    found.push(refuse('part-absent', { part: planKey(row.about.key) }));
  return found.filter((each) => each !== null);
};
