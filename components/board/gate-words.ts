import type { BoardCar } from '@/lib/wire/views/board';

const SMALL = [
  'Nothing',
  'One thing',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
];

/** `Eight things`. */
export const things = (count: number): string => {
  const word = SMALL[count] ?? String(count);
  return count < 2 ? word : `${word} things`;
};

/** Stages are counted from one, and a gate has the number of the stage that it ends. */
export const gateNumber = (car: Pick<BoardCar, 'stage'>): number => car.stage + 1;

export const gateText = (car: BoardCar): string =>
  car.gate.length === 0
    ? `Gate ${gateNumber(car)} is open.`
    : `Gate ${gateNumber(car)} is closed: ${things(car.gate.length).toLowerCase()} to clear.`;
