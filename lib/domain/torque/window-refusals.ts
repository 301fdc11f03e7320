/** Whether what each fastener got lies in the window, and whether a unit was mixed up where it doesn't. */
import { divide, exact, multiply, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Unit } from '@/lib/domain/base/units';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { placeOf, windowText } from '@/lib/domain/plan/window';
import type { Window } from '@/lib/domain/plan/window';

/** The two mix-ups that happen, each only where the tool shows one of its two units. */
const MIX_UPS: readonly { readonly factor: Exact; readonly units: readonly [Unit, Unit] }[] = [
  { factor: exact(12n), units: ['lbf·ft', 'lbf·in'] },
  { factor: exact(1356n, 1000n), units: ['N·m', 'lbf·ft'] },
];

/** Values are in the window's unit, by fastener number; `unit` is what the tool shows. */
export const windowRefusals = (
  joint: CompiledJoint,
  window: Window,
  delivered: Readonly<Record<string, Exact>>,
  unit: Unit,
  isUnitConfirmed: boolean,
): readonly Refusal[] =>
  Object.entries(delivered).flatMap(([fastener, value]): readonly Refusal[] => {
    const place = placeOf(window, value);
    if (place === 'inside') return [];
    const text = `${toDecimalText(value)} ${window.unit}`;
    const mixUp = isUnitConfirmed
      ? undefined
      : MIX_UPS.find(({ factor, units }) => units.includes(unit) && isInsideScaled(window, value, factor));
    if (mixUp !== undefined)
      return [
        refuse('unit-doubtful', {
          joint: joint.stateKey,
          value: text,
          unit,
          plausible: mixUp.units.join(' and '),
        }),
      ];
    const details = {
      joint: joint.stateKey,
      fastener: Number(fastener),
      delivered: text,
      window: windowText(window),
    };
    return [place === 'below' ? refuse('reading-below', details) : refuse('reading-above', details)];
  });

const isInsideScaled = (window: Window, value: Exact, factor: Exact): boolean => {
  const smaller = divide(value, factor);
  return (
    placeOf(window, multiply(value, factor)) === 'inside' ||
    (smaller !== null && placeOf(window, smaller) === 'inside')
  );
};
