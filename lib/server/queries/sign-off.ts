/** Reads what the sign-off sheet of one joint shows. */
import 'server-only';
import type { PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import { planOf } from '@/lib/domain/facts';
import type { Database } from '@/lib/server/database';
import { loadCar, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { SignOffView } from '@/lib/wire/views/sign-off';
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
  const view = plan === null ? null : viewOfJoint(plan, found, facts, joint, setting.zone);
  return view === null ? null : { view, shop: setting.name };
};
