/** Which streams and rows a command must hold while it is judged, sorted, so that no two commands wait for each other. */
import { COMMANDS } from './authority';
import type { Command } from './commands';

/** `car:012`, `shop`, `stage:<plan>/<stage>`; a car before anything else (its row is the lock of all that is on it). */
export type Lock = string;

/** The locks of a command. `plan` is the hash of the car's plan, for the room of the stage that it would enter. */
export const touches = (command: Command, plan: string | null): readonly Lock[] => {
  const { claim } = command;
  if (COMMANDS[claim.type].stream === 'shop' || !('car' in claim)) return ['shop'];
  const car: Lock = `car:${claim.car}`;
  // Two cars may want the same bay: the stage is locked as well (D29).
  if (claim.type === 'advance-car') return [car, `stage:${plan ?? ''}/${claim.to}`];
  return [car];
};
