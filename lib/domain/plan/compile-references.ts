/** What a plan's short texts point at, for one choice of options. */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { BodyRequirement, Requirement } from './compiled';
import type { PlanDocument, Repeat } from './document';
import { parseBodyLine, parseNeed, parseReference } from './notation';
import type { Need, Reference } from './notation';
import { positionsMeant, stateKey } from './positions';
import { checkClear, conditionIs, jointAtLevel, operationFinished } from './requirements';
import { applies } from './resolve';
import type { Applies } from './resolve';

export type Kind = 'operations' | 'joints' | 'checks' | 'stopgaps' | 'parts';

export interface PlanIndex {
  readonly document: PlanDocument;
  readonly options: Readonly<Record<Key, string>>;
  readonly stages: readonly Key[];
  readonly stageIndex: ReadonlyMap<Key, number>;
  appliesTo(kind: Kind, key: Key): Applies;
  /** The state keys that a reference means, seen from a thing with this repeat at this position. */
  targets(text: string, kind: Kind, referrer: Repeat | undefined, from: string | null): readonly StateKey[];
  needs(texts: readonly string[], referrer: Repeat | undefined, from: string | null): readonly Requirement[];
  body(
    texts: readonly string[],
    referrer: Repeat | undefined,
    from: string | null,
  ): readonly BodyRequirement[];
}

interface Entry {
  readonly when?: string;
  readonly repeat?: Repeat;
}

/** Reads references against one document; what doesn't resolve is left out, since `checkPlan` has reported it. */
export const planIndex = (document: PlanDocument, options: Readonly<Record<Key, string>>): PlanIndex => {
  const stages = Object.keys(document.stages);
  const stageIndex = new Map(stages.map((key, at) => [key, at]));

  const entryOf = (kind: Kind, key: Key): Entry | undefined => document[kind]?.[key];
  const appliesTo = (kind: Kind, key: Key): Applies => applies(entryOf(kind, key)?.when, options);

  const expand = (
    ref: Reference,
    kind: Kind,
    referrer: Repeat | undefined,
    from: string | null,
  ): readonly StateKey[] => {
    const entry = entryOf(kind, ref.key);
    if (entry === undefined) return [];
    const is = appliesTo(kind, ref.key);
    if ('on' in is && !is.on) return [];
    return (positionsMeant(ref, entry.repeat, referrer, from) ?? []).map((each) => stateKey(ref.key, each));
  };

  const targets: PlanIndex['targets'] = (text, kind, referrer, from) => {
    const ref = parseReference(text);
    return ref === null ? [] : expand(ref, kind, referrer, from);
  };

  /** A need on something that hangs on an undecided option is that option's. A need on what the car hasn't is met. */
  const onElement = (
    ref: Reference,
    kind: Kind,
    referrer: Repeat | undefined,
    from: string | null,
    make: (key: StateKey) => Requirement,
  ): readonly Requirement[] => {
    const is = appliesTo(kind, ref.key);
    if ('undecided' in is) return is.undecided.map((option) => ({ kind: 'option-chosen', option }));
    return expand(ref, kind, referrer, from).map(make);
  };

  const need = (parsed: Need, referrer: Repeat | undefined, from: string | null): readonly Requirement[] => {
    switch (parsed.kind) {
      case 'bare':
        return document.operations?.[parsed.ref.key] !== undefined
          ? onElement(parsed.ref, 'operations', referrer, from, operationFinished)
          : onElement(parsed.ref, 'checks', referrer, from, checkClear);
      case 'joint':
        return onElement(parsed.ref, 'joints', referrer, from, (joint) => jointAtLevel(joint, parsed.level));
      case 'stopgap-out':
        return onElement(parsed.ref, 'stopgaps', undefined, null, (stopgap) => ({
          kind: 'stopgap-out',
          stopgap,
        }));
      case 'condition':
        return [conditionIs(parsed.condition, parsed.value)];
      case 'wait':
        return onElement(parsed.ref, 'operations', referrer, from, (operation) => ({
          kind: 'wait-over',
          operation,
        }));
      case 'part':
        return onElement({ key: parsed.part, position: null }, 'parts', undefined, null, (part) => ({
          kind: 'part-present',
          part,
        }));
      case 'photo': {
        const kind = document.operations?.[parsed.ref.key] !== undefined ? 'operations' : 'checks';
        return onElement(parsed.ref, kind, referrer, from, (of) => ({
          kind: 'photo-present',
          of,
          slot: parsed.slot,
        }));
      }
    }
  };

  const bodyLine = (
    text: string,
    referrer: Repeat | undefined,
    from: string | null,
  ): readonly BodyRequirement[] => {
    const line = parseBodyLine(text);
    if (line === null) return [];
    const { verb, ref } = line;
    switch (verb) {
      case 'snug':
      case 'final':
      case 'retorque':
      case 'recheck':
      case 'open':
        return expand(ref, 'joints', referrer, from).map((joint) => ({ verb, joint }));
      case 'check':
        return expand(ref, 'checks', referrer, from).map((check) => ({ verb, check }));
      case 'place':
      case 'out':
        return expand(ref, 'stopgaps', undefined, null).map((stopgap) => ({ verb, stopgap }));
      case 'fit':
        return expand(ref, 'parts', undefined, null).map((part) => ({ verb, part }));
      case 'set':
      case 'clear':
        return [{ verb, condition: ref.key }];
      case 'photo':
        return [{ verb, slot: ref.key }];
    }
  };

  return {
    document,
    options,
    stages,
    stageIndex,
    appliesTo,
    targets,
    needs: (texts, referrer, from) =>
      texts.flatMap((text) => {
        const parsed = parseNeed(text);
        return parsed === null ? [] : need(parsed, referrer, from);
      }),
    body: (texts, referrer, from) => texts.flatMap((text) => bodyLine(text, referrer, from)),
  };
};
