import type { Metadata } from 'next';
import { ShopLogPage } from '@/components/car/log/shop-log-page';
import { Strip } from '@/components/shop/strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { shopLogView } from '@/lib/server/queries/log/shop';
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
  const view = await shopLogView(database(), asked, new Date().toISOString());
  return (
    <>
      <Strip current="log" who={person} shop={view.shop} />
      <ShopLogPage view={view} />
    </>
  );
}
