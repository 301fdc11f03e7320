import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { LogPage } from '@/components/car/log/log-page';
import { FollowCar } from '@/components/shop/follow';
import { Strip } from '@/components/shop/strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { versionsOf } from '@/lib/server/queries/clock';
import { logView } from '@/lib/server/queries/log';
import { LOG_KINDS } from '@/lib/wire/views/log';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: `Log of ${decodeURIComponent((await params).car)}` };
}

export default async function Page({ params, searchParams }: PageProps) {
  const { person } = await present();
  const id = decodeURIComponent((await params).car);
  const { kind, by, page } = await searchParams;
  const asked = {
    kind: LOG_KINDS.find((each) => each === kind) ?? ('everything' as const),
    by: typeof by === 'string' ? by : null,
    page: typeof page === 'string' && /^\d{1,6}$/.test(page) ? Number(page) : 1,
  };
  const at = await versionsOf(database(), id);
  const view = await logView(database(), id, asked, new Date().toISOString());
  if (view === null) notFound();
  return (
    <>
      <Strip who={person} shop={view.shop} />
      <FollowCar car={id} version={at.car} shop={at.shop} />
      <LogPage car={id} view={view} />
    </>
  );
}
