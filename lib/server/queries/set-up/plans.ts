/** Released plan revisions, and what a car that is begun on one must be asked. */
import 'server-only';
import type { Database } from '@/lib/server/database';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { PlansView, StartCarView } from '@/lib/wire/views/set-up';
import { nameOfPerson } from '@/lib/wire/views/names';
import { dayWords } from '@/lib/wire/views/when';

const counted = (section: object | undefined, word: string): string => {
  const count = Object.keys(section ?? {}).length;
  return `${String(count)} ${word}${count === 1 ? '' : 's'}`;
};

export const plansView = async (db: Database): Promise<PlansView> => {
  const [shop, { zone }, onPlans] = await Promise.all([
    loadShop(db),
    shopSetting(db),
    db.car.groupBy({ by: ['plan'], _count: true }),
  ]);
  const documents = await loadPlans(db, Object.keys(shop.plans));
  const dayOf = shopDay(zone);
  const today = dayOf(new Date().toISOString());
  return {
    plans: Object.entries(shop.plans).map(([hash, { model, revision, by, at }]) => {
      const { stages, operations, joints } = documents[hash] ?? {};
      const size = [counted(stages, 'stage'), counted(operations, 'operation'), counted(joints, 'joint')];
      return {
        hash,
        model,
        revision,
        says: `${size.join(', ')}; released ${dayWords(dayOf(at), today)} by ${nameOfPerson(shop.people, by, at)}`,
        cars: onPlans.find(({ plan }) => plan === hash)?._count ?? 0,
      };
    }),
  };
};

export const startCarView = async (db: Database): Promise<StartCarView> => {
  const [shop, cars] = await Promise.all([
    loadShop(db),
    db.car.findMany({ select: { id: true }, orderBy: { id: 'asc' } }),
  ]);
  const documents = await loadPlans(db, Object.keys(shop.plans));
  // The newest first: that is the one a car is begun on.
  const newest = Object.entries(shop.plans).sort(([, a], [, b]) => (a.at < b.at ? 1 : -1));
  return {
    plans: newest.map(([hash, { model, revision }]) => ({
      hash,
      says: `${model}, revision ${revision}`,
      options: Object.entries(documents[hash]?.options ?? {}).map(([key, { name, choices, usual }]) => ({
        key,
        name,
        choices,
        usual: usual ?? null,
      })),
    })),
    takenNumbers: cars.map(({ id }) => id),
  };
};
