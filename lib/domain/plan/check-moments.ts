/**
 * A plan's work as a graph of moments: an operation starts, a line of it is done, it is finished. Whole
 * operations would be too coarse: two may run at the same time and each wait for a line of the other.
 * Positions are left out: a ring of keys is always a ring of positions too, since every position of a thing
 * has the same needs and each need means at least one position.
 */
import { isOn } from './check-options';
import type { Chosen } from './check-options';
import { asksBefore, asksOfNeeds, asksOfOperation, performersOf } from './check-performers';
import type { Ask, Performer } from './check-performers';
import type { PlanReading, ReadOperation } from './check-reading';
import type { ProblemPath } from './problem';

export interface Want {
  /** Any one of these moments will do. */
  readonly anyOf: readonly string[];
  /** Where the plan says so; null for what lies in the nature of work: a line comes after the start. */
  readonly path: ProblemPath | null;
  readonly when: string | undefined;
}
export interface Moment {
  readonly label: string;
  /** What decides whether a car has it. */
  readonly whens: readonly (string | undefined)[];
  readonly wants: Want[];
}
export type Moments = ReadonlyMap<string, Moment>;

const startOf = (operation: ReadOperation): string => `start ${operation.key}`;
const momentOf = ({ operation, line }: Performer): string =>
  line === null ? `finish ${operation.key}` : `line ${operation.key} ${line}`;

/** The moments of a car with these options; null = every element at once, which no car may have. */
export const momentsOf = (reading: PlanReading, chosen: Chosen | null): Moments => {
  const performers = performersOf(reading);
  const before = asksBefore(reading, performers);
  const isHere = (when: string | undefined): boolean => chosen === null || isOn(when, chosen);
  const moments = new Map<string, Moment>();

  const wanted = (asks: readonly Ask[]): Want[] =>
    asks.flatMap(({ path, when, performers: found }) => {
      const anyOf = found.filter(({ operation }) => isHere(operation.entry.when)).map(momentOf);
      return isHere(when) && anyOf.length > 0 ? [{ anyOf, path, when }] : [];
    });

  for (const operation of reading.operations.values()) {
    const { key, entry, body } = operation;
    if (!isHere(entry.when)) continue;
    const start = startOf(operation);
    moments.set(start, {
      label: key,
      whens: [entry.when],
      wants: wanted(asksOfOperation(reading, performers, operation, before)),
    });
    const afterStart: Want = { anyOf: [start], path: null, when: undefined };
    const lines = body.map(({ value, text }, line): string => {
      const joint = reading.joints.get(value.ref.key);
      const isFinal = value.verb === 'final' || value.verb === 'retorque';
      // The line of a joint that the car hasn't needs nothing, and is done with the start.
      const needs =
        joint !== undefined && isFinal && isHere(joint.entry.when)
          ? asksOfNeeds(reading, performers, joint.finalNeeds)
          : [];
      const id = momentOf({ operation, line });
      moments.set(id, {
        label: `${text} (${key})`,
        whens: [entry.when, joint?.entry.when],
        wants: [afterStart, ...wanted(needs)],
      });
      return id;
    });
    moments.set(momentOf({ operation, line: null }), {
      label: key,
      whens: [entry.when],
      wants: [afterStart, ...lines.map((id): Want => ({ anyOf: [id], path: null, when: undefined }))],
    });
  }
  return moments;
};
