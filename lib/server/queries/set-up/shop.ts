/** What the shop is called and by which calendar it counts, and whether that may still be moved. */
import 'server-only';
import { mayMoveCalendar } from '@/lib/domain/shop/calendar';
import type { Person } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { ShopSettingView } from '@/lib/wire/views/set-up';
import { whenWords } from '@/lib/wire/views/when';

export const shopSettingView = async (db: Database, who: Person): Promise<ShopSettingView> => {
  const [{ name, zone, demo }, cars] = await Promise.all([shopSetting(db), db.car.count()]);
  const now = new Date().toISOString();
  return {
    name,
    zone,
    now: whenWords(zone, shopDay(zone)(now))(now),
    zones: Intl.supportedValuesOf('timeZone'),
    mayChange: who.roles.includes('owner') && !demo,
    mayMove: mayMoveCalendar(cars),
    isDemo: demo,
  };
};
