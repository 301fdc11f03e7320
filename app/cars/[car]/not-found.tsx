import { headers } from 'next/headers';
import { NoSuchCar } from '@/components/car/no-such-car';
import { Strip } from '@/components/shop/strip';
import { PATH_HEADER } from '@/lib/server/auth/passed-headers';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';
import { carsNear } from '@/lib/server/queries/car';

/** What was asked for is in the address only: a page of this kind gets no parameters. */
export default async function NotFound() {
  const { person } = await present();
  const asked = decodeURIComponent(((await headers()).get(PATH_HEADER) ?? '').split('/')[2] ?? '');
  const [{ name }, near] = await Promise.all([shopSetting(database()), carsNear(database(), asked)]);
  return (
    <>
      <Strip who={person} shop={name} />
      <NoSuchCar asked={asked} near={near} />
    </>
  );
}
