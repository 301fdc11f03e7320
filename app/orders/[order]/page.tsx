import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PurchaseSheet } from '@/components/purchases/purchase-sheet';
import { NotForYou } from '@/components/set-up/not-for-you';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
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

export default async function Page({ params }: PageProps) {
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
  const view = await purchaseView(database(), decoded((await params).order), new Date().toISOString());
  if (view === null) notFound();
  return (
    <>
      {strip}
      <FollowShop version={version} />
      <main className="pg stack purchases">
        <PurchaseSheet view={view} />
      </main>
    </>
  );
}
