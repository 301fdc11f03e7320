/** The car moves along its stages, and back. */
import type { Car, GateRow } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

export const gatePassed = (car: Car, event: Of<'gate-passed'>): Car => ({
  ...car,
  stage: event.to,
  gates: {
    ...car.gates,
    [event.stage]: { passedAt: event.meta.at, by: event.meta.by, overridden: event.overridden },
  },
});

/** The gates behind it are asked again, and what was overridden at them is void. */
export const sentBack = (car: Car, event: Of<'car-sent-back'>): Car => {
  const gates: Record<string, GateRow> = {};
  for (const [stage, row] of Object.entries(car.gates)) if (!event.stages.includes(stage)) gates[stage] = row;
  return { ...car, stage: event.to, gates };
};
