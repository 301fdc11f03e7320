import type { Metadata } from 'next';
import { ShopForm } from '@/components/set-up/shop-form';
import { database } from '@/lib/server/database';
import { shopSettingView } from '@/lib/server/queries/set-up/shop';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'The shop' };

export default function Page() {
  return (
    <Frame
      current="shop"
      title="The shop"
      says="What it is called, and by which calendar a moment is a day: qualifications and calibrations run out by it."
      page={async ({ person }) => {
        const view = await shopSettingView(database(), person);
        // Kept, the form begins anew with what is so now.
        return <ShopForm key={`${view.name} ${view.zone}`} view={view} />;
      }}
    />
  );
}
