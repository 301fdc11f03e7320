import type { Metadata } from 'next';
import { LogPage } from '@/components/car/log/log-page';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { logView } from '@/lib/server/queries/log/view';
import { LOG_KINDS } from '@/lib/wire/views/log';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Log' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  const { person } = await present();
  const { kind, by, of, page } = await searchParams;
  const asked = {
    kind: LOG_KINDS.find((each) => each === kind) ?? ('everything' as const),
    by: typeof by === 'string' ? by : null,
    of: typeof of === 'string' ? of : null,
    page: typeof page === 'string' && /^\d{1,6}$/.test(page) ? Number(page) : 1,
  };
  const clock = await floorClock(database());
  const view = await logView(database(), asked, new Date().toISOString());
  return (
    <>
      <ShopStrip current="log" who={person} />
      <FollowFloor clock={clock} />
      <LogPage view={view} />
    </>
  );
}
