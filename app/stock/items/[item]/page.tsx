import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ItemSheet } from '@/components/stock/item-sheet';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { itemView } from '@/lib/server/queries/stock';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly item: string }>;
}

export const generateMetadata = async ({ params }: PageProps): Promise<Metadata> => ({
  title: `Item ${decoded((await params).item)}`,
});

export default async function Page({ params }: PageProps) {
  const { person } = await present();
  const clock = await floorClock(database());
  const view = await itemView(database(), decoded((await params).item), new Date().toISOString());
  if (view === null) notFound();
  return (
    <>
      <ShopStrip current="stock" who={person} />
      <FollowFloor clock={clock} />
      <main className="pg stack stock">
        <ItemSheet view={view} />
      </main>
    </>
  );
}
