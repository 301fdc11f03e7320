import type { Metadata } from 'next';
import { Suspense } from 'react';
import { WeekOrder } from '@/components/order/week-order';
import '@/components/set-up/set-up.css';
import { FollowFloor } from '@/components/shop/follow';
import { PageWaiting } from '@/components/ui/page-waiting';
import { ForLeads } from '@/app/for-leads';
import { hasRole } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { orderView } from '@/lib/server/queries/order';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Week’s order' };

/** For a lead or an owner: there are prices in it. */
export default function Page() {
  return (
    <ForLeads
      current="order"
      page={(who) => (
        <main className="pg stack week">
          <Suspense fallback={<PageWaiting says="The cheapest order is being worked out" />}>
            <Order approver={hasRole(who, ['owner']) ? { id: who.person.id, name: who.person.name } : null} />
          </Suspense>
        </main>
      )}
    />
  );
}

interface OrderProps {
  readonly approver: { readonly id: string; readonly name: string } | null;
}

async function Order({ approver }: OrderProps) {
  const clock = await floorClock(database());
  const view = await orderView(database(), new Date().toISOString());
  return (
    <>
      <FollowFloor clock={clock} />
      <WeekOrder view={view} approver={approver} />
    </>
  );
}
