import { CarTag } from '@/components/shop/plate';
import type { HardwareCar } from '@/lib/wire/views/hardware';

/** The cars that something is for. */
export function CarTags({ cars }: { readonly cars: readonly HardwareCar[] }) {
  return (
    <span className="tags">
      {cars.map((car) => (
        <CarTag key={car.id} chassis={car.chassis} colour={car.colour} />
      ))}
    </span>
  );
}
