/** What the table of commands says of one, and how its rows are written. */
import type { RefusalCode } from './base/refusals';
import type { CommandKind, Role } from './base/vocabulary';

export interface CommandRule {
  readonly kind: CommandKind;
  readonly stream: 'car' | 'shop';
  readonly roles: readonly Role[] | 'anyone';
  /** What it says, for a list of commands. */
  readonly says: string;
  /** What it may be refused for, besides naming nothing and asking for a person or a role. */
  readonly refuses: readonly RefusalCode[];
}

export const LEADS: readonly Role[] = ['lead', 'owner'];
export const LEAD: readonly Role[] = ['lead'];
export const OWNER: readonly Role[] = ['owner'];

type Rule = (
  stream: CommandRule['stream'],
  roles: CommandRule['roles'],
  says: string,
  refuses?: readonly RefusalCode[],
) => CommandRule;

const rule =
  (kind: CommandKind): Rule =>
  (stream, roles, says, refuses = []) => ({ kind, stream, roles, says, refuses });

export const assurance = rule('assurance');
export const warning = rule('warning');
export const note = rule('note');
