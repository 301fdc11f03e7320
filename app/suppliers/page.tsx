import type { Metadata } from 'next';
import { Suspense } from 'react';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { Suppliers } from '@/components/suppliers/suppliers';
import { PageWaiting } from '@/components/ui/page-waiting';
import { ForLeads } from '@/app/for-leads';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { suppliersView } from '@/lib/server/queries/suppliers';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Suppliers and offers' };

/** For a lead or an owner: who sells to the shop, and what they ask. */
export default function Page() {
  return (
    <ForLeads
      current="order"
      page={() => (
        <main className="pg stack set-up suppliers">
          <Suspense fallback={<PageWaiting says="The offers are being read" />}>
            <Offers />
          </Suspense>
        </main>
      )}
    />
  );
}

async function Offers() {
  const { version } = await loadShop(database());
  const view = await suppliersView(database());
  return (
    <>
      <FollowShop version={version} />
      <Suppliers view={view} />
    </>
  );
}
