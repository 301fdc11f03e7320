/** The track board as the server says it: every count and every sentence is made there, the browser only shows them. */
import type { RefusalLine } from './said-line';

export interface BoardView {
  readonly shop: string;
  /** Where the whole shop stood when this was read (lib/wire/live.ts). */
  readonly clock: number;
  /** `Wednesday 25 November. Six cars, 43 loose ends.` */
  readonly says: string;
  readonly mover: Mover;
  /** Who can be given a stage; null for those who give none. */
  readonly people: readonly BoardPerson[] | null;
  readonly groups: readonly BoardGroup[];
  readonly tray: ReadyTray;
  /** What to do first, where no car stands on the floor. */
  readonly empty: EmptyBoard | null;
}

/** Work that may begin now, on all cars: all of it is ready by the rules, and some of it lacks parts (D59). */
export interface ReadyTray {
  readonly ready: TrayList;
  readonly butForParts: TrayList;
}

export interface TrayList {
  readonly jobs: readonly TrayJob[];
  /** How many more there are than stand here. */
  readonly more: number;
}

export interface TrayJob {
  /** Of the whole shop: car and job. */
  readonly id: string;
  readonly href: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly key: string;
  readonly name: string;
  /** `1 h`; empty where the plan does not say. */
  readonly takes: string;
  /** `2 × bolt M8 × 30 (on order, due Mon 30 Nov)`; empty where nothing is missing. */
  readonly lacks: string;
}

/** May this person move cars? If not, who may. */
export interface Mover {
  readonly may: boolean;
  readonly says: string;
}

export interface BoardPerson {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
  /** Qualifications that hold today. */
  readonly holds: readonly string[];
}

export interface EmptyBoard {
  readonly title: string;
  readonly says: string;
  readonly href: string | null;
  readonly act: string | null;
}

/** Cars that go through the same stages. */
export interface BoardGroup {
  readonly name: string;
  readonly stages: readonly BoardStage[];
  readonly cars: readonly BoardCar[];
}

export interface BoardStage {
  readonly key: string;
  readonly name: string;
  /** `1 of 2 taken`; empty where there is no limit. */
  readonly room: string;
  /** Qualifications that some of its work asks for. */
  readonly asks: readonly string[];
}

export interface BoardCar {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly model: string;
  readonly revision: string;
  readonly version: number;
  /** Index of the stage it stands in. */
  readonly stage: number;
  readonly crew: readonly CrewCell[];
  /** Whom each of its stages was given to, by id. */
  readonly given: readonly (readonly string[])[];
  /** How many loose ends the car has. */
  readonly loose: number;
  /** What holds all of its work, or its gate: `H-1`, and in words. */
  readonly hold: { readonly mark: string; readonly says: string } | null;
  readonly way: readonly BoardCell[];
  /** Everything that keeps the gate before it closed. */
  readonly gate: readonly RefusalLine[];
}

export interface CrewCell {
  readonly initials: string;
  readonly name: string;
}

export interface BoardCell {
  /** Runs of like heads and boxes: `13v 3f 2O 5p`; see RAIL_CODES. */
  readonly rail: string;
  /** Joints and checks that are settled, of those due here; operations where a plan has neither. */
  readonly done: number;
  readonly of: number;
  /** `done 17 Jul`, where its gate was passed. */
  readonly when: string | null;
  /** What is not settled in a stage behind: `2 open`. */
  readonly note: string | null;
  /** All of it in words. */
  readonly says: string;
}

/** One letter for each sign of a rail, in the order in which they stand. */
export const RAIL_CODES = {
  v: 'verified',
  f: 'final',
  s: 'snug',
  d: 'disturbed',
  o: 'open',
  D: 'latedisturbed',
  O: 'lateopen',
  p: 'passed',
  x: 'failed',
  u: 'due',
  U: 'latedue',
} as const;
export type RailCode = keyof typeof RAIL_CODES;
