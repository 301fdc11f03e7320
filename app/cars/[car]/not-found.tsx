import { headers } from 'next/headers';
import { NoSuchCar } from '@/components/car/no-such-car';
import { ShopStrip } from '@/app/shop-strip';
import { PATH_HEADER } from '@/lib/server/auth/passed-headers';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { carsNear } from '@/lib/server/queries/car';

/** What was asked for is in the address only: a page of this kind gets no parameters. */
export default async function NotFound() {
  const { person } = await present();
  const asked = decodeURIComponent(((await headers()).get(PATH_HEADER) ?? '').split('/')[2] ?? '');
  const near = await carsNear(database(), asked);
  return (
    <>
      <ShopStrip who={person} />
      <NoSuchCar asked={asked} near={near} />
    </>
  );
}
