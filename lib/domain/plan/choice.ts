/** What a choice changes: which elements of the plan it brings onto a car, and which it leaves out. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from './document';
import { optionsOf, parseWhen } from './notation';
import { applies } from './resolve';

export interface ChoiceEffect {
  readonly brings: readonly Key[];
  readonly leavesOut: readonly Key[];
}

const SECTIONS = ['operations', 'joints', 'checks', 'stopgaps', 'parts'] as const;

/** Of all that names the option. What hangs on another option too, which nobody has chosen yet, is in neither list. */
export const effectOf = (
  document: PlanDocument,
  chosen: Readonly<Record<Key, string>>,
  option: Key,
  choice: string,
): ChoiceEffect => {
  const then = { ...chosen, [option]: choice };
  const brings: Key[] = [];
  const leavesOut: Key[] = [];
  for (const section of SECTIONS)
    for (const [key, { when }] of Object.entries<{ readonly when?: string }>(document[section] ?? {})) {
      const expression = when === undefined ? null : parseWhen(when);
      if (expression === null || !optionsOf(expression).includes(option)) continue;
      const found = applies(when, then);
      if ('on' in found) (found.on ? brings : leavesOut).push(key);
    }
  return { brings, leavesOut };
};
