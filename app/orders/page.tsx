import type { Metadata } from 'next';
import { PurchaseList } from '@/components/purchases/purchase-list';
import { NotForYou } from '@/components/set-up/not-for-you';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { purchasesView } from '@/lib/server/queries/purchases';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Orders' };

/** For a lead or an owner: there are prices in it. */
export default async function Page() {
  const who = await present();
  const strip = <ShopStrip current="order" who={who.person} />;
  if (!hasRole(who, ['lead', 'owner']))
    return (
      <>
        {strip}
        <NotForYou />
      </>
    );
  const { version } = await loadShop(database());
  const view = await purchasesView(database(), new Date().toISOString());
  return (
    <>
      {strip}
      <FollowShop version={version} />
      <main className="pg stack purchases">
        <PurchaseList view={view} />
      </main>
    </>
  );
}
