import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { KitPick } from '@/components/kits/kit-pick';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { floorClock } from '@/lib/server/queries/clock';
import { kitView } from '@/lib/server/queries/kits';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string; readonly operation: string }>;
}

export const generateMetadata = async ({ params }: PageProps): Promise<Metadata> => ({
  title: `Kit for ${decoded((await params).operation)}`,
});

export default async function Page({ params }: PageProps) {
  const { person } = await present();
  const { car, operation } = await params;
  const clock = await floorClock(database());
  const asked = { car: decoded(car), operation: decoded(operation) };
  const view = await kitView(database(), person.id, asked, new Date().toISOString());
  if (view === null) notFound();
  return (
    <>
      <ShopStrip who={person} />
      <FollowFloor clock={clock} />
      <main className="pg kits">
        <KitPick view={view} />
      </main>
    </>
  );
}
