/** A list that hangs from a gate post while the floor moves on: it keeps step with the car that it is about. */
import type { BoardCar } from '@/lib/wire/views/board';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import { gateNumber, things } from './gate-words';
import { isOfTheMove } from './groups';
import type { Hanging } from './use-moves';

const isSame = (one: readonly RefusalLine[], other: readonly RefusalLine[]): boolean => {
  const keys = (lines: readonly RefusalLine[]): string =>
    lines.map(({ code, href, says }) => `${code} ${href ?? ''} ${says}`).join('\n');
  return keys(one) === keys(other);
};

/** What hangs, with the lines that hold the gate now. What was said of the move itself stays as it was said. */
export const followed = (hanging: Hanging, car: BoardCar): Hanging => {
  if (hanging.lines.length === 0 || hanging.again !== null || isSame(car.gate, hanging.gate)) return hanging;
  const ofTheMove = hanging.lines.filter(isOfTheMove);
  const count = car.gate.length;
  return {
    ...hanging,
    lines: [...ofTheMove, ...car.gate],
    isRefusal: hanging.isRefusal && ofTheMove.length + count > 0,
    says:
      count === 0
        ? `Changed since: nothing holds gate ${gateNumber(car)} closed now.`
        : `Changed since: ${things(count).toLowerCase()} to clear now before gate ${gateNumber(car)}.`,
  };
};
