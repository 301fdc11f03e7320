import type { Metadata } from 'next';
import { Suspense } from 'react';
import { Demand } from '@/components/hardware/demand';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { hardwareView } from '@/lib/server/queries/hardware';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Hardware demand' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** For everybody: it says what there is and what is short, and no price. */
export default async function Page({ searchParams }: PageProps) {
  const { person } = await present();
  const { show } = await searchParams;
  return (
    <>
      <ShopStrip current="hardware" who={person} />
      <main className="pg stack hardware">
        <Suspense fallback={<PageWaiting says="The cars are being read" />}>
          <Items isAll={show === 'all'} />
        </Suspense>
      </main>
    </>
  );
}

async function Items({ isAll }: { readonly isAll: boolean }) {
  const clock = await floorClock(database());
  const view = await hardwareView(database(), isAll, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <Demand view={view} isAll={isAll} />
    </>
  );
}
