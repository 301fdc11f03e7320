import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { LogPage } from '@/components/car/log/log-page';
import { FollowCar } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { isCar } from '@/lib/server/queries/car';
import { versionsOf } from '@/lib/server/queries/clock';
import { logView } from '@/lib/server/queries/log/view';
import { LOG_KINDS } from '@/lib/wire/views/log';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: `Log of ${decoded((await params).car)}` };
}

export default async function Page({ params, searchParams }: PageProps) {
  const { person } = await present();
  const id = decoded((await params).car);
  if (!(await isCar(database(), id))) notFound();
  const { kind, by, page } = await searchParams;
  const asked = {
    kind: LOG_KINDS.find((each) => each === kind) ?? ('everything' as const),
    of: id,
    by: typeof by === 'string' ? by : null,
    page: typeof page === 'string' && /^\d{1,6}$/.test(page) ? Number(page) : 1,
  };
  const at = await versionsOf(database(), id);
  const view = await logView(database(), asked, new Date().toISOString());
  return (
    <>
      <ShopStrip who={person} />
      <FollowCar car={id} version={at.car} shop={at.shop} />
      <LogPage view={view} />
    </>
  );
}
