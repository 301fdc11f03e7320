/** The joint as the torque rules take it, made again from the view. What they never ask of it is left empty. */
import { fromExactText } from '@/lib/domain/car/joint';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import type { Window } from '@/lib/domain/plan/window';
import type { JointView, WindowView } from '@/lib/wire/views/sign-off';

export const windowOf = ({ low, high, target, unit, text }: WindowView): Window => ({
  low: low === null ? null : fromExactText(low),
  high: high === null ? null : fromExactText(high),
  target: target === null ? null : fromExactText(target),
  unit,
  text,
});

export const ruledJoint = (view: JointView): CompiledJoint => ({
  key: view.key,
  stateKey: view.key,
  name: view.name,
  undecided: [],
  due: 0,
  operation: null,
  fasteners: view.fasteners,
  order: view.order,
  passes: view.passes,
  method: view.method,
  specification:
    view.specification.kind === 'window'
      ? { kind: 'window', window: windowOf(view.specification.window) }
      : view.specification,
  angle: view.angle === null ? null : windowOf(view.angle),
  sequence: view.sequence.map(({ step, window }) => ({
    step,
    window: window === null ? null : windowOf(window),
  })),
  hardware: [],
  critical: view.critical,
  verify: view.verify,
  dueLevel: view.dueLevel,
  who: view.who,
  verifier: view.verifier,
  finalNeeds: [],
  disturbs: [],
  clears: [],
  loadedBy: [],
  useOnce: view.useOnce,
  slaves: [],
  broughtBy: [],
});
