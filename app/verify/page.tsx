import type { Metadata } from 'next';
import { Suspense } from 'react';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { VerifyQueue } from '@/components/verify/verify-queue';
import { PageWaiting } from '@/components/ui/page-waiting';
import type { Person } from '@/lib/domain/shop/rows';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { verifyView } from '@/lib/server/queries/verify';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Verify' };

export default async function Page() {
  // Before anything is sent, so that who is not signed in is sent away with a plain redirect.
  const { person } = await present();
  return (
    <>
      <ShopStrip current="verify" who={person} />
      <main className="pg stack verify">
        <Suspense fallback={<PageWaiting says="The floor is being read" />}>
          <Queue who={person} />
        </Suspense>
      </main>
    </>
  );
}

async function Queue({ who }: { readonly who: Person }) {
  const clock = await floorClock(database());
  const view = await verifyView(database(), who, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <VerifyQueue view={view} />
    </>
  );
}
