import type { Job } from '@/lib/domain/assess';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { BoardCar } from '@/lib/wire/views/board';

/** A car's row with what it was made from. The same for whoever looks. */
export interface Row {
  readonly plan: CompiledPlan;
  readonly car: BoardCar;
  readonly of: Car;
  readonly jobs: readonly Job[];
}
