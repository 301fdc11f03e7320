import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { LotSheet } from '@/components/stock/lot-sheet';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { lotView } from '@/lib/server/queries/stock/lot';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly lot: string }>;
}

export const generateMetadata = async ({ params }: PageProps): Promise<Metadata> => ({
  title: `Lot ${decoded((await params).lot)}`,
});

export default async function Page({ params }: PageProps) {
  const { person } = await present();
  const clock = await floorClock(database());
  const view = await lotView(database(), decoded((await params).lot), new Date().toISOString());
  if (view === null) notFound();
  return (
    <>
      <ShopStrip current="stock" who={person} />
      <FollowFloor clock={clock} />
      <main className="pg stack stock">
        <LotSheet view={view} me={person.id} />
      </main>
    </>
  );
}
