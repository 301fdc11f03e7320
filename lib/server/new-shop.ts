/** A shop of one's own: a name, a calendar, one owner, and nothing invented. */
import 'server-only';
import { createHash } from 'node:crypto';
import { mayMoveCalendar } from '@/lib/domain/shop/calendar';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { Database } from './database';
import { runCommand } from './run-command';

/** What a shop is called whose owner was not asked, or did not say. */
export const UNNAMED = 'My shop';

export interface NewShop {
  readonly name: string;
  /** IANA name of its time zone. */
  readonly zone: string;
  readonly owner: { readonly id: string; readonly name: string; readonly roles?: readonly Role[] };
}

/**
 * Opens the books. Done again with the same answers it does nothing; a shop that is open already under another name or
 * with other people is left as it is, and that is said.
 */
export const newShop = async (
  db: Database,
  { name, zone, owner }: NewShop,
  now: string,
): Promise<{ readonly opened: true } | { readonly opened: false; readonly says: string }> => {
  const before = await db.shopSetting.findUnique({ where: { id: 1 } });
  if (before !== null && (before.name !== name || before.demo))
    return { opened: false, says: `this database holds the shop “${before.name}” already` };
  await db.shopSetting.upsert({ where: { id: 1 }, create: { id: 1, name, zone }, update: {} });
  const answer = await runCommand(db, zone, {
    command: {
      id: `new-shop-${createHash('sha256').update(owner.id).digest('hex').slice(0, 24)}`,
      doneAt: now,
      claim: { type: 'add-person', person: owner.id, name: owner.name, roles: owner.roles ?? ['owner'] },
    },
    actor: owner.id,
    present: null,
    device: null,
    lastContact: null,
    isInOrder: true,
    now,
  });
  if (answer.outcome === 'accepted') return { opened: true };
  const there = await db.person.findUnique({ where: { id: owner.id } });
  return there !== null ? { opened: true } : { opened: false, says: 'this shop has its people already' };
};

/** Another name, another calendar; null, or why not. Neither stands in the log: no judgement is told by them. */
export const setShop = (
  db: Database,
  { name, zone }: Pick<NewShop, 'name' | 'zone'>,
): Promise<string | null> =>
  db.$transaction(async (tx) => {
    const before = await tx.shopSetting.findUnique({ where: { id: 1 } });
    if (before === null || before.demo)
      return 'The demo keeps its name. A shop of your own is begun beside it.';
    if (before.zone !== zone && !mayMoveCalendar(await tx.car.count()))
      return `A car is begun, and its days were counted in ${before.zone}. The calendar stays.`;
    await tx.shopSetting.update({ where: { id: 1 }, data: { name, zone } });
    return null;
  });
