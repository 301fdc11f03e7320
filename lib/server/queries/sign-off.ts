/** Reads what the sign-off sheet of one joint shows. */
import 'server-only';
import type { Day, PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadCar, loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { loadSupplies } from './kits/supplies';
import { NO_STORES } from './sign-off/lot-choices';
import type { Stores } from './sign-off/lot-choices';
import { viewOfJoint } from './sign-off/view';

/** Null where there is no such car, or its plan has no such joint. */
export const signOffView = async (
  db: Database,
  car: string,
  joint: StateKey,
  actor: PersonId,
  now: string,
): Promise<{ readonly view: SignOffView; readonly shop: string } | null> => {
  const [shop, found, setting] = await Promise.all([loadShop(db), loadCar(db, car), shopSetting(db)]);
  if (found === null) return null;
  const plans = await loadPlans(db, [found.plan]);
  const facts = viewFacts(shop, [found], plans, actor, now, setting.zone);
  const plan = planOf(facts, found);
  if (plan === null) return null;
  const stores = isTraced(plan, joint) ? await storesNow(db, shop, facts.day) : NO_STORES;
  const view = viewOfJoint(plan, found, facts, joint, setting.zone, stores);
  return view === null ? null : { view, shop: setting.name };
};

const isTraced = ({ joints, document }: CompiledPlan, joint: StateKey): boolean =>
  joints.get(joint)?.hardware.some(({ item }) => document.items?.[item]?.trace === 'lot') ?? false;

/** What may be taken off the shelf: what lies in the boxes of any car may not. */
const storesNow = async (db: Database, shop: Shop, today: Day): Promise<Stores> => {
  const { shelf } = await loadSupplies(db, shop, await loadFloor(db), today);
  return { bins: shop.bins, shelf };
};
