import type { BoardCar, BoardPerson, BoardStage } from '@/lib/wire/views/board';

/** A stage of a car, as a place where people are put. */
export interface Spot {
  readonly car: BoardCar;
  readonly stages: readonly BoardStage[];
  readonly stage: number;
}

export const isOn = ({ car, stage }: Spot, person: string): boolean =>
  car.given[stage]?.includes(person) === true;

/** `Steering of C54-012`. */
export const spotName = ({ car, stages, stage }: Spot): string =>
  `${stages[stage]?.name ?? ''} of ${car.chassis}`;

/** A note and no refusal: they may do the rest of its work, or learn there. Empty where nothing is lacking. */
export const lacksText = ({ stages, stage }: Spot, person: BoardPerson): string => {
  const lacking = (stages[stage]?.asks ?? []).filter((asked) => !person.holds.includes(asked));
  return lacking.length === 0
    ? ''
    : `Not qualified for ${lacking.join(', ')}, which some of its work asks for.`;
};
