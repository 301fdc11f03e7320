/** Makes requirements, each with what it says while nobody has touched its thing: most of what a young car waits for. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Key, MarkLevel, StateKey } from '@/lib/domain/base/vocabulary';
import type { Requirement } from './compiled';

export const operationFinished = (operation: StateKey): Requirement => ({
  kind: 'operation-finished',
  operation,
  untouched: refuse('operation-unfinished', { operation, status: 'not started' }),
});

export const jointAtLevel = (joint: StateKey, level: MarkLevel): Requirement => ({
  kind: 'joint-at-level',
  joint,
  level,
  untouched: refuse('joint-below-level', { joint, level: 'open', wanted: level }),
});

export const checkClear = (check: StateKey): Requirement => ({
  kind: 'check-clear',
  check,
  untouched: refuse('check-not-clear', { check, status: 'not done' }),
});

export const conditionIs = (condition: Key, value: boolean): Requirement => ({
  kind: 'condition',
  condition,
  value,
  otherwise: value ? refuse('condition-not-true', { condition }) : refuse('condition-true', { condition }),
});
