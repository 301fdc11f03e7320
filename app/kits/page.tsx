import type { Metadata } from 'next';
import { Suspense } from 'react';
import { KitList } from '@/components/kits/kit-list';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { kitsView } from '@/lib/server/queries/kits';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Kits to pick' };

export default async function Page() {
  const { person } = await present();
  return (
    <>
      <ShopStrip who={person} />
      <main className="pg stack kits">
        <Suspense fallback={<PageWaiting says="The kits are being read" />}>
          <Kits me={person.id} />
        </Suspense>
      </main>
    </>
  );
}

async function Kits({ me }: { readonly me: string }) {
  const clock = await floorClock(database());
  const view = await kitsView(database(), me, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <KitList view={view} />
    </>
  );
}
