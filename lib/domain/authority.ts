/**
 * Every command there is, in one table: what kind of act it is, which stream it belongs to, who may do it.
 *
 * - An *assurance* says that something is all right. It may be refused, and every reason is given.
 * - A *warning* says that something is not, or no longer. It is never refused for the state of things:
 *   only for authority, or for naming nothing.
 * - A *note* promises nothing and takes nothing back.
 *
 * Roles: a person holds several; `anyone` is everybody on the shop's books.
 */
import type { CommandKind, Role } from './base/vocabulary';
import {
  BODY,
  EVIDENCE,
  EYES,
  GATE,
  ITEM_TERMS,
  LOOK,
  NEEDS,
  OFFER,
  PIN,
  START,
  SUPPLIER,
  TIGHTEN,
  TRUST,
} from './base/refusal-groups';
import { refuse } from './base/refusals';
import type { Refusal, RefusalCode } from './base/refusals';
import type { ClaimType, Command } from './commands';
import type { Facts } from './facts';

interface CommandRule {
  readonly kind: CommandKind;
  readonly stream: 'car' | 'shop';
  readonly roles: readonly Role[] | 'anyone';
  /** What it says, for a list of commands. */
  readonly says: string;
  /** What it may be refused for, besides naming nothing and asking for a person or a role. */
  readonly refuses: readonly RefusalCode[];
}

const LEADS: readonly Role[] = ['lead', 'owner'];
const LEAD: readonly Role[] = ['lead'];
const OWNER: readonly Role[] = ['owner'];

type Rule = (
  stream: CommandRule['stream'],
  roles: CommandRule['roles'],
  says: string,
  refuses?: readonly RefusalCode[],
) => CommandRule;

const rule =
  (kind: CommandKind): Rule =>
  (stream, roles, says, refuses = []) => ({ kind, stream, roles, says, refuses });

const assurance = rule('assurance');
const warning = rule('warning');
const note = rule('note');

export const COMMANDS: Readonly<Record<ClaimType, CommandRule>> = {
  // people, tools, lots
  'add-person': note('shop', LEADS, 'someone works here', ['already-there']),
  'qualify-person': assurance('shop', LEADS, 'someone may do this kind of work, from a day to a day', []),
  'end-qualification': note('shop', LEADS, 'someone may do this kind of work up to a day and no longer'),
  'rename-person': note('shop', LEADS, 'someone is called something else from now on'),
  'change-roles': note('shop', OWNER, 'someone has other roles from now on', ['last-owner']),
  'remove-person': note('shop', LEADS, 'someone no longer works here', ['last-owner']),
  'add-tool': note('shop', LEADS, 'the shop has this tool', ['already-there', 'value-unreadable']),
  'add-adapter': note('shop', LEADS, "the shop has this crow's-foot or extension", [
    'already-there',
    'value-unreadable',
  ]),
  'record-calibration': assurance('shop', LEADS, 'a tool was calibrated, and how it was found', [
    'value-unreadable',
  ]),
  'suspect-tool': warning('shop', 'anyone', 'a tool was dropped, lost, is overdue, or reads wrong'),
  'release-plan': assurance('shop', LEADS, 'cars may be begun on a plan revision', ['already-there']),
  'receive-lot': assurance('shop', LEADS, 'a lot of hardware came in', ['already-there']),
  'quarantine-lot': warning('shop', 'anyone', 'a lot must not be used'),
  'clear-lot': assurance('shop', LEADS, 'a lot kept apart is good after all', ['lot-not-quarantined']),

  // stock: books give way to the shelf
  'receive-stock': assurance('shop', LEADS, 'bulk goods came in', ['value-unreadable', 'already-there']),
  'count-stock': note('shop', 'anyone', 'somebody counted what is there', [
    'already-there',
    'value-unreadable',
    'lot-of-other-item',
  ]),
  'draw-stock': warning('shop', 'anyone', 'goods went that are in no car'),
  'put-back': note('shop', 'anyone', 'goods came back to the shelf', [
    'value-unreadable',
    'lot-of-other-item',
  ]),
  'put-away': note('shop', 'anyone', 'goods lie in this bin from now on', [
    'already-there',
    'value-unreadable',
    'lot-of-other-item',
  ]),
  // buying
  'set-item': note('shop', LEADS, 'what the shop keeps of an item, and how', ITEM_TERMS),
  'set-supplier': note('shop', LEADS, 'who sells to the shop, and on what terms', SUPPLIER),
  'set-offer': note('shop', LEADS, 'what a supplier asks for a pack', OFFER),
  'end-offer': note('shop', LEADS, 'a pack is no longer sold', ['offer-ended']),
  'import-items': note('shop', LEADS, 'a file of items', ['given-before', ...ITEM_TERMS]),
  'import-offers': note('shop', LEADS, 'a file of offers', ['given-before', ...OFFER]),
  'pin-line': note('shop', LEADS, 'an order has this line so, whatever is cheapest', PIN),
  'unpin-line': note('shop', LEADS, 'an order has this line as is cheapest again'),
  'approve-order': assurance('shop', OWNER, 'orders are sent as they were shown', [
    'price-changed',
    'freight-changed',
    'ordered-since',
    'order-day-past',
    'too-few-packs',
    'order-too-small',
    'given-before',
  ]),
  'receive-order': assurance('shop', LEADS, 'goods of an order came in', [
    'value-unreadable',
    'already-there',
    'given-before',
    'nothing-came',
  ]),
  'promise-order': note('shop', LEADS, 'an order is promised for another day'),
  'end-order-line': note('shop', LEADS, 'what has not come of a line will not come any more', [
    'nothing-outstanding',
  ]),
  'credit-order': note('shop', LEADS, 'money of an order comes back'),

  // the car as a whole
  'start-car': assurance('car', LEADS, 'a car is begun on a plan revision', [
    'already-there',
    'choice-unknown',
  ]),
  'choose-option': assurance('car', LEADS, 'an option that the plan offers is chosen', [
    'option-already-chosen',
    'choice-unknown',
  ]),
  'advance-car': assurance('car', LEAD, 'the car passes its stage gate', [
    'last-gate',
    'one-stage-at-a-time',
    'room-full',
    ...GATE,
  ]),
  'send-back': warning('car', LEAD, 'the car goes back to an earlier stage'),
  'deliver-car': assurance('car', OWNER, 'the car is delivered', [
    'car-delivered',
    'not-last-gate',
    'part-owed',
    ...GATE,
  ]),
  'place-hold': warning('car', 'anyone', 'the car, a piece of work or a part is stopped'),
  'release-hold': assurance('car', LEADS, 'a hold is over', ['hold-already-released']),
  assign: note('car', LEADS, 'a job or a stage is given to people, or no longer', []),
  'add-note': note('car', 'anyone', 'a remark', []),
  'add-photo': note('car', 'anyone', 'a photo was taken', []),

  // operations
  'start-operation': assurance('car', 'anyone', 'an operation begins', [
    'operation-already-running',
    'operation-already-finished',
    'stale-run',
    'clock-running',
    ...START,
  ]),
  'join-operation': assurance('car', 'anyone', 'another person is on it too', [
    'operation-not-running',
    'already-on-it',
    'clock-running',
    'not-qualified',
    'hold-stands',
  ]),
  'pause-operation': warning('car', 'anyone', 'work stops, and how it was left'),
  'leave-operation': warning('car', 'anyone', 'one person steps out; who is last leaves the work paused'),
  'resume-operation': assurance('car', 'anyone', 'work goes on', [
    'operation-not-running',
    'operation-already-running',
    'clock-running',
    ...START,
  ]),
  'take-over-operation': assurance('car', 'anyone', 'someone else goes on with it', [
    'operation-not-running',
    'already-on-it',
    'clock-running',
    ...START,
  ]),
  'finish-operation': assurance('car', 'anyone', 'everything it means is done', [
    'operation-not-running',
    'stale-run',
    'not-on-it',
    'crew-too-small',
    'hold-stands',
    'lot-quarantined',
    'lot-expired',
    ...BODY,
  ]),

  // joints
  'snug-joint': assurance('car', 'anyone', 'fitted and run up to contact', ['level-already', ...TIGHTEN]),
  'final-joint': assurance('car', 'anyone', 'brought to final torque, with the evidence', [
    'level-already',
    'slave-part-in-joint',
    'doubt-needs-more',
    ...TIGHTEN,
    ...NEEDS,
    ...EVIDENCE,
  ]),
  'verify-joint': assurance('car', 'anyone', 'a second person has made sure', [
    'level-already',
    'joint-not-final',
    'joint-in-doubt',
    'not-independent',
    'verify-method-differs',
    ...EYES,
  ]),
  'recheck-joint': assurance('car', 'anyone', 'tried again with a good tool; nothing moved', [
    'joint-not-final',
    'nothing-to-recheck',
    'doubt-needs-more',
    'no-work-names-joint',
    ...EYES,
  ]),
  'reject-joint': warning('car', 'anyone', 'a second person does not agree'),
  'open-joint': warning('car', 'anyone', 'fasteners were loosened'),
  'report-disturbed': warning('car', 'anyone', 'a stripe is broken, or a fastener moved'),
  'report-over-torque': warning('car', 'anyone', 'a fastener got more than the window allows'),

  // checks, findings, changes
  'begin-check': assurance('car', 'anyone', 'a timed check begins', LOOK),
  'pass-check': assurance(
    'car',
    'anyone',
    'a check is passed; a value outside its limits fails it all the same',
    ['value-missing', 'value-unreadable', 'check-not-begun', 'check-too-short', ...TRUST, ...LOOK],
  ),
  'fail-check': warning('car', 'anyone', 'a check is failed'),
  'report-finding': warning('car', 'anyone', 'something is wrong with a part, a joint or a place'),
  'decide-finding': assurance('car', LEADS, 'what is done about a finding', [
    'finding-already',
    'never-concede',
  ]),
  'close-finding': assurance('car', 'anyone', "a finding's work is done", [
    'finding-already',
    'finding-undecided',
    'change-undecided',
    'check-not-clear',
    'joint-below-level',
    'joint-in-doubt',
    'part-absent',
  ]),
  'ask-change': note('car', 'anyone', 'a departure from the plan is asked for', []),
  'decide-change': assurance('car', LEADS, 'a change is approved or declined', [
    'change-already',
    'approver-not-independent',
  ]),

  // stopgaps, conditions, parts
  'place-stopgap': warning('car', 'anyone', 'a temporary fixing went in'),
  'remove-stopgap': assurance('car', 'anyone', 'a temporary fixing came out', ['removed-more-than-placed']),
  'set-condition': assurance('car', 'anyone', 'a condition that no work sets is true', [
    'condition-already',
    'condition-set-by-work',
    ...BODY,
  ]),
  'clear-condition': warning('car', 'anyone', 'a condition is no longer true'),
  'receive-part': assurance('car', 'anyone', 'a part is here and good', ['part-already']),
  'fit-part': assurance('car', 'anyone', 'a part is on the car', [
    'part-already',
    'part-absent',
    'part-not-taken-into-work',
    'finding-on-part',
    'hold-stands',
    'option-undecided',
  ]),
  'take-part': warning('car', 'anyone', 'a part came off, perhaps for another car'),

  // kits: books give way to the box
  'pick-kit': note('car', 'anyone', 'hardware for a piece of work is in its box', [
    'operation-already-finished',
    'stale-run',
    'value-unreadable',
    'lot-of-other-item',
    'lot-quarantined',
    'lot-expired',
  ]),
  'empty-kit': note('car', 'anyone', 'hardware of a box is back on the shelf', ['value-unreadable']),
  'report-kit-line': warning('car', 'anyone', 'hardware of a kit is the wrong one, damaged or not there'),

  // taking back
  'strike-signature': warning('car', 'anyone', 'a signature was wrong: own until verified, then the lead', [
    'strike-needs-lead',
  ]),
};

/** Acts that are a signature: whoever gives one says who they are again, at that moment (D4). */
export const SIGNS: ReadonlySet<ClaimType> = new Set<ClaimType>([
  'finish-operation',
  'snug-joint',
  'final-joint',
  'verify-joint',
  'recheck-joint',
  'pass-check',
  'remove-stopgap',
  'fit-part',
  'decide-finding',
  'decide-change',
  'release-hold',
  'clear-lot',
  'strike-signature',
  'deliver-car',
  'approve-order',
]);

/** May this person give this command? Independence rules are per joint and stand with the joint's own rules. */
export const mayAct = (facts: Facts, command: Command): readonly Refusal[] => {
  const { claim } = command;
  const { type } = claim;
  const { says } = COMMANDS[type];
  const roles = asksForOwner(facts, command) ? OWNER : COMMANDS[type].roles;
  const person = facts.people[facts.actor];
  // An empty book takes its first person from whoever opens it; that person must be an owner.
  if (claim.type === 'add-person' && Object.keys(facts.people).length === 0)
    return claim.roles.includes('owner')
      ? []
      : [refuse('not-allowed', { act: type, says, roles: OWNER, actor: facts.actor })];
  if (person === undefined || person.left) return [refuse('unknown-person', { person: facts.actor })];
  return roles === 'anyone' || person.roles.some((role) => roles.includes(role))
    ? []
    : [refuse('not-allowed', { act: type, says, roles, actor: facts.actor })];
};

/** Who lets an owner in or out is an owner: a lead can't make one of themselves. */
const asksForOwner = (facts: Facts, { claim }: Command): boolean =>
  (claim.type === 'add-person' && claim.roles.includes('owner')) ||
  (claim.type === 'remove-person' && (facts.people[claim.person]?.roles.includes('owner') ?? false));
