/** The log as screens show it: one entry for each command, with what it brought. */
import type { PersonTag, RowSign } from './car';
import type { CarMark } from './my-work';
import type { PhotoRef } from './photo';

/** What happened, in the shop's words. */
export interface EventLine {
  readonly sign: RowSign;
  /** What it happened to, `J-511 Gearbox cross-member`; empty where the words say it. */
  readonly thing: string;
  readonly says: string;
}

export const LOG_KINDS = ['signatures', 'warnings', 'moves', 'refused', 'struck'] as const;
export type LogKind = (typeof LOG_KINDS)[number];

export interface LogEntry {
  readonly id: string;
  readonly kind: LogKind | 'other';
  readonly who: PersonTag;
  /** `Wed`, `25 Nov`. */
  readonly day: string;
  readonly date: string;
  readonly time: string;
  readonly line: EventLine;
  /** What came of it by itself, or why it was refused. */
  readonly brought: readonly string[];
  /** What was photographed with it; absent where nothing was. */
  readonly photos?: readonly PhotoRef[];
  /** Late, from another device, with a doubted clock: what is worth knowing about its time. */
  readonly note: string | null;
  /** Who struck it, when and why; the line is drawn struck through. */
  readonly struck: string | null;
  readonly isRefused: boolean;
}

/** An entry, and the car that it is about; null = the shop's own books. */
export interface LogLine {
  readonly entry: LogEntry;
  readonly car: CarMark | null;
}

export interface LogDay {
  readonly title: string;
  readonly lines: readonly LogLine[];
}

/** The log of one car, of the shop's books, or of all together. */
export interface LogView {
  readonly days: readonly LogDay[];
  readonly shown: number;
  readonly total: number;
  /** As people count: the first is 1. */
  readonly page: number;
  readonly pages: number;
  readonly kind: LogKind | 'everything';
  readonly by: string | null;
  /** A car's id, or `shop` for the books; null = all of it. */
  readonly of: string | null;
  readonly people: readonly PersonTag[];
  readonly cars: readonly CarMark[];
}
