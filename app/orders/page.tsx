import type { Metadata } from 'next';
import { PurchaseList } from '@/components/purchases/purchase-list';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { ForLeads } from '@/app/for-leads';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { purchasesView } from '@/lib/server/queries/purchases';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Orders' };

/** For a lead or an owner: there are prices in it. */
export default function Page() {
  return (
    <ForLeads
      current="order"
      page={async () => {
        const { version } = await loadShop(database());
        const view = await purchasesView(database(), new Date().toISOString());
        return (
          <>
            <FollowShop version={version} />
            <main className="pg stack purchases">
              <PurchaseList view={view} />
            </main>
          </>
        );
      }}
    />
  );
}
