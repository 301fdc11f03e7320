import type { Metadata } from 'next';
import { Suspense } from 'react';
import { TripList } from '@/components/trips/trip-list';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import type { Person } from '@/lib/domain/shop/rows';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { tripsView } from '@/lib/server/queries/trips';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Outside work' };

export default async function Page() {
  const { person } = await present();
  return (
    <>
      <ShopStrip who={person} />
      <main className="pg stack trips">
        <Suspense fallback={<PageWaiting says="The trips are being read" />}>
          <Trips who={person} />
        </Suspense>
      </main>
    </>
  );
}

async function Trips({ who }: { readonly who: Person }) {
  const clock = await floorClock(database());
  const view = await tripsView(database(), who, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <TripList view={view} />
    </>
  );
}
