import type { Metadata } from 'next';
import { PlanForm } from '@/components/set-up/plan-form';
import { PlanList } from '@/components/set-up/plan-list';
import { database } from '@/lib/server/database';
import { plansView } from '@/lib/server/queries/set-up/plans';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Build plans' };

export default function Page() {
  return (
    <Frame
      current="plans"
      title="Build plans"
      says="A revision is frozen under its own hash, and every car names the one it is built by."
      page={async () => {
        const view = await plansView(database());
        return (
          <>
            <PlanList view={view} />
            <PlanForm />
          </>
        );
      }}
    />
  );
}
