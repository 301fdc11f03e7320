import type { Metadata } from 'next';
import { EnrolTablet } from '@/components/set-up/enrol-tablet';
import { TabletList } from '@/components/set-up/tablet-list';
import { database } from '@/lib/server/database';
import { tabletsView } from '@/lib/server/queries/set-up/tablets';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Tablets' };

export default function Page() {
  return (
    <Frame
      current="tablets"
      title="Tablets"
      says="Where technicians sign in, and where a PIN signs. No other browser takes one."
      page={async ({ person, device }) => {
        const view = await tabletsView(database(), person, device);
        return (
          <>
            <TabletList view={view} />
            <EnrolTablet view={view} />
          </>
        );
      }}
    />
  );
}
