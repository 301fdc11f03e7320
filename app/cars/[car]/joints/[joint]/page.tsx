import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { FollowCar } from '@/components/shop/follow';
import { Sheet } from '@/components/sign-off/sheet';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { versionsOf } from '@/lib/server/queries/clock';
import { signOffView } from '@/lib/server/queries/sign-off';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly car: string; readonly joint: string }>;
}

const named = async ({ params }: PageProps): Promise<{ readonly car: string; readonly joint: string }> => {
  const { car, joint } = await params;
  return { car: decoded(car), joint: decoded(joint) };
};

export const generateMetadata = async (props: PageProps): Promise<Metadata> => {
  const { car, joint } = await named(props);
  return { title: `${joint} of ${car}` };
};

export default async function Page(props: PageProps) {
  const who = await present();
  const { car, joint } = await named(props);
  const at = await versionsOf(database(), car);
  const found = await signOffView(database(), car, joint, who.person.id, new Date().toISOString());
  if (found === null) notFound();
  return (
    <>
      <ShopStrip who={who.person} />
      <FollowCar car={car} version={at.car} shop={at.shop} />
      <main className="so">
        <Sheet key={`${car} ${joint}`} view={found.view} present={who.person.id} />
      </main>
    </>
  );
}
