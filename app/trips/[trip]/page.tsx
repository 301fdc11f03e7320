import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { TripSheet } from '@/components/trips/trip-sheet';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import type { Person } from '@/lib/domain/shop/rows';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { floorClock } from '@/lib/server/queries/clock';
import { tripView } from '@/lib/server/queries/trips';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly trip: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: `Trip ${decoded((await params).trip)}` };
}

export default async function Page({ params }: PageProps) {
  const { person } = await present();
  const id = decoded((await params).trip);
  if ((await loadShop(database())).trips[id] === undefined) notFound();
  return (
    <>
      <ShopStrip who={person} />
      <main className="pg stack trips">
        <Suspense fallback={<PageWaiting says="The trip is being read" />}>
          <Trip id={id} who={person} />
        </Suspense>
      </main>
    </>
  );
}

async function Trip({ id, who }: { readonly id: string; readonly who: Person }) {
  const clock = await floorClock(database());
  const view = await tripView(database(), id, who, new Date().toISOString());
  return view === null ? (
    notFound()
  ) : (
    <>
      <FollowFloor clock={clock} />
      <TripSheet view={view} />
    </>
  );
}
