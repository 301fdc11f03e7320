import { NothingThere } from '@/components/stock/nothing-there';
import { ShopStrip } from '@/app/shop-strip';
import { present } from '@/lib/server/auth/session';

export default async function NotFound() {
  const { person } = await present();
  return (
    <>
      <ShopStrip current="stock" who={person} />
      <NothingThere />
    </>
  );
}
