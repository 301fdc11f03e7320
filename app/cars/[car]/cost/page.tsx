import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { CarCost } from '@/components/cost/car-cost';
import '@/components/set-up/set-up.css';
import { FollowCar } from '@/components/shop/follow';
import { PageWaiting } from '@/components/ui/page-waiting';
import { ForLeads } from '@/app/for-leads';
import { hasRole, present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { isCar } from '@/lib/server/queries/car';
import { versionsOf } from '@/lib/server/queries/clock';
import { costView } from '@/lib/server/queries/cost';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: `Cost of ${decoded((await params).car)}` };
}

/** For a lead or an owner: there are prices in it. */
export default async function Page({ params }: PageProps) {
  await present();
  const id = decoded((await params).car);
  if (!(await isCar(database(), id))) notFound();
  return (
    <ForLeads
      page={(who) => (
        <main className="pg stack cost">
          <Suspense fallback={<PageWaiting says="What this car cost is being added up" />}>
            <Cost id={id} maySet={hasRole(who, ['owner'])} />
          </Suspense>
        </main>
      )}
    />
  );
}

interface CostProps {
  readonly id: string;
  readonly maySet: boolean;
}

async function Cost({ id, maySet }: CostProps) {
  const at = await versionsOf(database(), id);
  const view = await costView(database(), id, new Date().toISOString());
  if (view === null) return notFound();
  return (
    <>
      <FollowCar car={id} version={at.car} shop={at.shop} />
      <CarCost view={view} maySet={maySet} />
    </>
  );
}
