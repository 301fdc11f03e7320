/** Joints tightened step by step: seat while turning, back off, light preload, next slot, pin in. */
import { parseDecimal } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { placeOf, windowText } from '@/lib/domain/plan/window';

/** What is missing or out of its window among the plan's steps; values are in the step's own unit. */
export const sequenceRefusals = (
  joint: CompiledJoint,
  given: Readonly<Record<string, string>>,
): readonly Refusal[] =>
  joint.sequence.flatMap(({ step, window }): readonly Refusal[] => {
    const text = given[step];
    if (text === undefined) return [refuse('step-missing', { joint: joint.stateKey, step })];
    if (window === null) return [];
    const value = parseDecimal(text);
    if (value === null)
      return [refuse('value-unreadable', { field: step, text, wanted: `a number in ${window.unit}` })];
    if (placeOf(window, value) === 'inside') return [];
    return [refuse('step-outside', { joint: joint.stateKey, step, value: text, window: windowText(window) })];
  });
