/** A plan's short texts, each read once for all rules of the checker; what can't be read becomes a problem. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type {
  CheckEntry,
  JointEntry,
  OperationEntry,
  PlanDocument,
  StageEntry,
  StopgapEntry,
} from './document';
import { parseBodyLine, parseNeed, parseReference } from './notation';
import type { BodyLine, Need, Reference } from './notation';
import { problem } from './problem';
import type { Problem, ProblemCode, ProblemPath } from './problem';

/** A text that could be read, with its place. */
export interface Read<T> {
  readonly value: T;
  readonly text: string;
  readonly path: ProblemPath;
}

interface ReadEntry<E> {
  readonly key: Key;
  readonly entry: E;
}
export interface ReadStage extends ReadEntry<StageEntry> {
  readonly index: number;
  readonly needs: readonly Read<Need>[];
}
export interface ReadOperation extends ReadEntry<OperationEntry> {
  readonly needs: readonly Read<Need>[];
  readonly body: readonly Read<BodyLine>[];
  readonly covers: readonly Read<Reference>[];
}
export interface ReadJoint extends ReadEntry<JointEntry> {
  readonly finalNeeds: readonly Read<Need>[];
  readonly disturbs: readonly Read<Reference>[];
}
export interface ReadStopgap extends ReadEntry<StopgapEntry> {
  readonly slaveIn: readonly Read<Reference>[];
}

export interface PlanReading {
  readonly document: PlanDocument;
  readonly stages: ReadonlyMap<Key, ReadStage>;
  readonly operations: ReadonlyMap<Key, ReadOperation>;
  readonly joints: ReadonlyMap<Key, ReadJoint>;
  readonly checks: ReadonlyMap<Key, ReadEntry<CheckEntry>>;
  readonly stopgaps: ReadonlyMap<Key, ReadStopgap>;
  readonly unreadable: readonly Problem[];
}

export const readElements = (document: PlanDocument): PlanReading => {
  const unreadable: Problem[] = [];
  const list =
    <T>(parse: (text: string) => T | null, code: ProblemCode) =>
    (texts: readonly string[] | undefined, ...path: string[]): Read<T>[] =>
      (texts ?? []).flatMap((text, at) => {
        const value = parse(text);
        if (value !== null) return [{ value, text, path: [...path, at] }];
        unreadable.push(problem(code, [...path, at], { text }));
        return [];
      });
  const needs = list(parseNeed, 'need-unreadable');
  const lines = list(parseBodyLine, 'body-unreadable');
  const references = list(parseReference, 'reference-unreadable');

  const stages = byKey(document.stages, (key, entry, index) => ({
    key,
    entry,
    index,
    needs: needs(entry.entry, 'stages', key, 'entry'),
  }));
  const operations = byKey(document.operations, (key, entry) => ({
    key,
    entry,
    needs: needs(entry.needs, 'operations', key, 'needs'),
    body: lines(entry.body, 'operations', key, 'body'),
    covers: references(entry.covers, 'operations', key, 'covers'),
  }));
  const joints = byKey(document.joints, (key, entry) => ({
    key,
    entry,
    finalNeeds: needs(entry.finalNeeds, 'joints', key, 'finalNeeds'),
    disturbs: references(entry.disturbs, 'joints', key, 'disturbs'),
  }));
  const checks = byKey(document.checks, (key, entry) => ({ key, entry }));
  const stopgaps = byKey(document.stopgaps, (key, entry) => ({
    key,
    entry,
    slaveIn: references(entry.slaveIn, 'stopgaps', key, 'slaveIn'),
  }));
  return { document, stages, operations, joints, checks, stopgaps, unreadable };
};

/** A map, not the record itself: `constructor` must not be found in a record that doesn't hold it. */
const byKey = <E, T>(
  record: Readonly<Record<Key, E>> | undefined,
  make: (key: Key, entry: E, index: number) => T,
): ReadonlyMap<Key, T> =>
  new Map(Object.entries(record ?? {}).map(([key, entry], index) => [key, make(key, entry, index)]));
