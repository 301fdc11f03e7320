import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PurchaseSheet } from '@/components/purchases/purchase-sheet';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { ForLeads } from '@/app/for-leads';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { purchaseView } from '@/lib/server/queries/purchases';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly order: string }>;
}

export const generateMetadata = async ({ params }: PageProps): Promise<Metadata> => ({
  title: `Order ${decoded((await params).order)}`,
});

export default function Page({ params }: PageProps) {
  return (
    <ForLeads
      current="order"
      page={async () => {
        const { version } = await loadShop(database());
        const view = await purchaseView(database(), decoded((await params).order), new Date().toISOString());
        if (view === null) notFound();
        return (
          <>
            <FollowShop version={version} />
            <main className="pg stack purchases">
              <PurchaseSheet view={view} />
            </main>
          </>
        );
      }}
    />
  );
}
