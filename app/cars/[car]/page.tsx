import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { CarPage } from '@/components/car/car-page';
import { CarWaiting } from '@/components/car/car-waiting';
import { FollowCar } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { carView, isCar } from '@/lib/server/queries/car';
import { versionsOf } from '@/lib/server/queries/clock';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: decoded((await params).car) };
}

export default async function Page({ params, searchParams }: PageProps) {
  // Before anything is sent, so that who is not signed in, or asks for no car, gets a plain answer.
  const who = await present();
  const { person } = who;
  const id = decoded((await params).car);
  if (!(await isCar(database(), id))) notFound();
  const at = await versionsOf(database(), id);
  const { job, strike } = await searchParams;
  return (
    <>
      <ShopStrip who={person} />
      <FollowCar car={id} version={at.car} shop={at.shop} />
      <Suspense fallback={<CarWaiting chassis={id} />}>
        <TheCar
          id={id}
          actor={person.id}
          job={one(job)}
          signature={one(strike)}
          seesCost={hasRole(who, ['lead', 'owner'])}
        />
      </Suspense>
    </>
  );
}

interface TheCarProps {
  readonly id: string;
  readonly actor: string;
  readonly job: string | null;
  readonly signature: string | null;
  readonly seesCost: boolean;
}

async function TheCar({ id, actor, job, signature, seesCost }: TheCarProps) {
  const view = await carView(database(), id, actor, signature, new Date().toISOString());
  return view === null ? (
    notFound()
  ) : (
    <CarPage view={view} job={job} signature={signature} seesCost={seesCost} />
  );
}

const one = (value: string | readonly string[] | undefined): string | null =>
  typeof value === 'string' ? value : null;
