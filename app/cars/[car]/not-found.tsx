import { headers } from 'next/headers';
import { NoSuchCar } from '@/components/car/no-such-car';
import { NoSuchJoint } from '@/components/car/no-such-joint';
import { ShopStrip } from '@/app/shop-strip';
import { PATH_HEADER } from '@/lib/server/auth/passed-headers';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { carsNear, jointNear } from '@/lib/server/queries/car';
import { decoded } from '@/lib/wire/decoded';

/** What was asked for is in the address only: a page of this kind gets no parameters. */
export default async function NotFound() {
  const { person } = await present();
  const path = ((await headers()).get(PATH_HEADER) ?? '').split('/');
  const [car = '', , joint] = path.slice(2).map(decoded);
  return (
    <>
      <ShopStrip who={person} />
      <Missing car={car} joint={joint} />
    </>
  );
}

interface MissingProps {
  readonly car: string;
  readonly joint: string | undefined;
}

async function Missing({ car, joint }: MissingProps) {
  const found = joint === undefined ? null : await jointNear(database(), car, joint);
  return found === null || joint === undefined ? (
    <NoSuchCar asked={car} near={await carsNear(database(), car)} />
  ) : (
    <NoSuchJoint car={car} chassis={found.chassis} asked={joint} near={found.joint} />
  );
}
