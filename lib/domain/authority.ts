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
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { CAR_COMMANDS } from './car-commands';
import { OWNER } from './command-rule';
import type { CommandRule } from './command-rule';
import type { ClaimType, Command } from './commands';
import type { Facts } from './facts';
import { SHOP_COMMANDS } from './shop-commands';

export const COMMANDS: Readonly<Record<ClaimType, CommandRule>> = { ...SHOP_COMMANDS, ...CAR_COMMANDS };

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
