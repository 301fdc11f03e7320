import type { Metadata } from 'next';
import { Suspense } from 'react';
import { MyWork } from '@/components/my-work/my-work';
import { PageWaiting } from '@/components/ui/page-waiting';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import type { Person } from '@/lib/domain/shop/rows';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { myWorkView } from '@/lib/server/queries/my-work';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'My work' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  // Before anything is sent, so that who is not signed in is sent away with a plain redirect.
  const { person } = await present();
  const { car, job } = await searchParams;
  return (
    <>
      <ShopStrip current="my-work" who={person} />
      <main className="pg stack mywork">
        <Suspense fallback={<PageWaiting says="Your work is being read" />}>
          <Work who={person} car={car} job={job} />
        </Suspense>
      </main>
    </>
  );
}

interface WorkProps {
  readonly who: Person;
  readonly car: unknown;
  readonly job: unknown;
}

async function Work({ who, car, job }: WorkProps) {
  const asked = typeof car === 'string' && typeof job === 'string' ? { car, job } : null;
  const clock = await floorClock(database());
  const view = await myWorkView(database(), who, asked, new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <MyWork view={view} />
    </>
  );
}
