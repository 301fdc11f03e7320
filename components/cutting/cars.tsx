import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import type { CutCarChoice } from '@/lib/wire/views/cutting';

/** Which cars are cut for together. A plain form: what is chosen stands in the address, and can be sent to somebody. */
export function CutCars({ cars }: { readonly cars: readonly CutCarChoice[] }) {
  if (cars.length < 2) return null;
  return (
    // Chosen anew: the boxes then show what the address says.
    <form
      key={cars.map(({ id, isIn }) => `${id}${String(isIn)}`).join()}
      className="sheet cars"
      action="/cutting"
    >
      <fieldset>
        <legend className="label">Cut together</legend>
        {cars.map(({ id, chassis, colour, isIn }) => (
          <label key={id}>
            <input type="checkbox" name="car" value={id} defaultChecked={isIn} />
            <CarTag chassis={chassis} colour={colour} />
          </label>
        ))}
      </fieldset>
      <p className="acts">
        <Button type="submit">Plan these</Button>
        {cars.every(({ isIn }) => isIn) ? null : (
          <Link className="btn quiet" href="/cutting" prefetch={false}>
            All cars
          </Link>
        )}
      </p>
    </form>
  );
}
