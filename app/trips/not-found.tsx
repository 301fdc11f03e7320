import { NoSuchTrip } from '@/components/trips/trip-list';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';

export default async function NotFound() {
  const { person } = await present();
  return (
    <>
      <ShopStrip who={person} />
      <NoSuchTrip />
    </>
  );
}
