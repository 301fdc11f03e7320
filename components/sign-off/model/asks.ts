/** What a final of this joint with this tool asks for, one thing after another, as the hand does it. */
import type { ToolKind } from '@/lib/domain/base/vocabulary';
import type { JointView } from '@/lib/wire/views/sign-off';

export type Ask =
  /** A click wrench: what it is set to, once. */
  | { readonly kind: 'setting'; readonly id: 'setting' }
  /** Brought there in this pass: nothing to read. */
  | { readonly kind: 'tap'; readonly id: string; readonly pass: number; readonly fastener: number }
  /** Prevailing torque: what the nut takes to turn before it clamps. */
  | { readonly kind: 'drag'; readonly id: string; readonly fastener: number }
  | { readonly kind: 'reading'; readonly id: string; readonly fastener: number }
  | { readonly kind: 'angle'; readonly id: string; readonly fastener: number }
  /** `index` of the plan's step; with a value or just done. */
  | { readonly kind: 'step'; readonly id: string; readonly index: number };

/** Asks with a number to type. */
export type ValueAsk = Exclude<Ask, { kind: 'tap' }>;

type AsksOf = Pick<JointView, 'method' | 'order' | 'passes' | 'sequence' | 'specification'>;

/** In the order in which they are done. `kind` is that of the tool; null where none is chosen. */
export const asksOf = (joint: AsksOf, kind: ToolKind | null): readonly Ask[] => {
  if (joint.method === 'sequence')
    return joint.sequence.map((_, index) => ({ kind: 'step', id: `step:${String(index)}`, index }));
  if (isByHand(joint) || joint.specification.kind === 'no-value-yet' || kind === null) return [];
  const isClick = kind === 'click';
  const passes = Array.from({ length: joint.passes }, (_, index) => index + 1);
  return [
    ...(isClick ? [{ kind: 'setting', id: 'setting' } as const] : []),
    ...passes.flatMap((pass) =>
      joint.order.flatMap((fastener) =>
        pass < joint.passes || isClick ? [tap(pass, fastener)] : read(joint, fastener),
      ),
    ),
    ...(joint.method === 'angle'
      ? joint.order.map((fastener): Ask => ({ kind: 'angle', id: `angle:${String(fastener)}`, fastener }))
      : []),
  ];
};

const tap = (pass: number, fastener: number): Ask => ({
  kind: 'tap',
  id: `tap:${String(pass)}:${String(fastener)}`,
  pass,
  fastener,
});

const read = ({ method }: AsksOf, fastener: number): readonly Ask[] => [
  ...(method === 'prevailing' ? [{ kind: 'drag', id: `drag:${String(fastener)}`, fastener } as const] : []),
  { kind: 'reading', id: `reading:${String(fastener)}`, fastener },
];

/** Tightened by hand tool: no value is published, so that no tool is named and nothing is read. */
export const isByHand = ({ method, specification }: Pick<AsksOf, 'method' | 'specification'>): boolean =>
  method === 'firm' || (specification.kind === 'no-value-published' && method !== 'sequence');

/** The pass that an ask belongs to; what is read belongs to the last. */
export const passOf = (ask: Ask, joint: Pick<JointView, 'passes'>): number =>
  ask.kind === 'tap' ? ask.pass : joint.passes;
