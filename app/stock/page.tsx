import type { Metadata } from 'next';
import { Suspense } from 'react';
import { StockList } from '@/components/stock/stock-list';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { stockView } from '@/lib/server/queries/stock';
import type { StockAsked } from '@/lib/server/queries/stock';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Stock and lots' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  const { person } = await present();
  const { show, q } = await searchParams;
  const asked = { isAll: show === 'all', words: typeof q === 'string' ? q.slice(0, 60) : '' };
  return (
    <>
      <ShopStrip current="stock" who={person} />
      <main className="pg stack stock">
        <Suspense fallback={<PageWaiting says="The bins are being read" />}>
          <Bins asked={asked} />
        </Suspense>
      </main>
    </>
  );
}

async function Bins({ asked }: { readonly asked: StockAsked }) {
  const clock = await floorClock(database());
  const view = await stockView(database(), asked, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <StockList view={view} isAll={asked.isAll} words={asked.words.trim()} />
    </>
  );
}
