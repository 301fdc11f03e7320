import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { DonorGrid } from '@/components/donor/donor-grid';
import { FollowCar } from '@/components/shop/follow';
import { PageWaiting } from '@/components/ui/page-waiting';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { isCar } from '@/lib/server/queries/car';
import { versionsOf } from '@/lib/server/queries/clock';
import { donorView } from '@/lib/server/queries/donor';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: `Donor for ${decoded((await params).car)}` };
}

export default async function Page({ params }: PageProps) {
  const { person } = await present();
  const id = decoded((await params).car);
  if (!(await isCar(database(), id))) notFound();
  const at = await versionsOf(database(), id);
  return (
    <>
      <ShopStrip who={person} />
      <FollowCar car={id} version={at.car} shop={at.shop} />
      <main className="pg stack donorpage">
        <Suspense fallback={<PageWaiting says="The donor is being read" />}>
          <Donor id={id} actor={person.id} />
        </Suspense>
      </main>
    </>
  );
}

async function Donor({ id, actor }: { readonly id: string; readonly actor: string }) {
  const view = await donorView(database(), id, actor, new Date().toISOString());
  return view === null ? notFound() : <DonorGrid view={view} />;
}
