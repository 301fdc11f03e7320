/** Departures from the plan: asked by one, approved by another who did not do the work. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { ChangeRow, Edit } from '@/lib/domain/car/rows';
import type { CarPayload } from '@/lib/domain/events';
import { accept, nextId, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';

/** Ending a wait early is a concession. */
export const askChange = (at: Case, claim: CarClaimOf<'ask-change'>): Decision => {
  const operation = at.plan.operations.get(claim.wait);
  if (operation === undefined) return unknown('operation', claim.wait);
  return accept({
    type: 'change-asked',
    change: nextId('D', at.car.changes),
    edits: [{ kind: 'accept', wait: claim.wait }],
    reason: claim.reason,
    due: Math.min(operation.due, at.car.stage),
    critical: false,
    performers: at.car.operations[claim.wait]?.crew ?? [],
  });
};

export const decideChange = (at: Case, claim: CarClaimOf<'decide-change'>): Decision => {
  const { change: id } = claim;
  const row = at.car.changes[id];
  if (row === undefined) return unknown('change', id);
  const { actor } = at.facts;
  const refusals: Refusal[] = [];
  if (row.state !== 'asked') refusals.push(refuse('change-already', { change: id, state: row.state }));
  if (claim.approve && (actor === row.requestedBy || row.performers.includes(actor)))
    refusals.push(refuse('approver-not-independent', { person: actor, change: id }));
  return unless(refusals, () =>
    claim.approve ? approved(at, id, row) : declined(at, id, row, claim.reason),
  );
};

/** A critical one waits for an owner; anybody else's approval is kept and not enough. */
const approved = (at: Case, id: string, row: ChangeRow): readonly CarPayload[] => {
  const isOwner = at.facts.people[at.facts.actor]?.roles.includes('owner') ?? false;
  const complete = !row.critical || isOwner || row.approvals.some((each) => each.owner);
  return [
    { type: 'change-approved', change: id, owner: isOwner, complete },
    ...(complete ? row.edits.flatMap((edit) => taken(at, id, edit)) : []),
  ];
};

const taken = (at: Case, change: string, edit: Edit): readonly CarPayload[] => {
  if ('wait' in edit) return [{ type: 'wait-ended', operation: edit.wait, change }];
  const finding = at.car.findings[edit.finding];
  const check = finding?.check ?? null;
  const closed: CarPayload = {
    type: 'finding-closed',
    finding: edit.finding,
    because: `${change}: taken as it is`,
  };
  const row = check === null ? undefined : at.car.checks[check.key];
  return check === null || row === undefined
    ? [closed]
    : [{ type: 'check-conceded', check: check.key, round: row.round, change }, closed];
};

const declined = (
  at: Case,
  id: string,
  row: ChangeRow,
  reason: string | undefined,
): readonly CarPayload[] => [
  { type: 'change-declined', change: id, reason: reason ?? '' },
  ...row.edits.flatMap((edit): readonly CarPayload[] =>
    'finding' in edit && at.car.findings[edit.finding]?.state === 'decided'
      ? [{ type: 'finding-reopened', finding: edit.finding, because: `${id} was declined` }]
      : [],
  ),
];
