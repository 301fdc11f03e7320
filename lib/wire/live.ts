/**
 * What an open screen is told while it is open (`GET /api/live`, server-sent events). The same bytes go to everybody,
 * so nothing in them depends on who looks.
 */
import type { BoardCar, BoardGroup, ReadyTray } from './views/board';

/** Newest version of each stream: `shop`, `car:C54-012`. */
export type Versions = Readonly<Record<string, number>>;

/**
 * The first message of a connection: where everything stood when it began. Whoever shows something older missed
 * something and asks for the page again; whatever comes after is told.
 */
export interface Stand {
  readonly kind: 'stand';
  /** Sum of the versions of all streams: of two moments the later one has the higher clock. */
  readonly clock: number;
  readonly versions: Versions;
}

/** Something happened. */
export interface News extends Floor {
  readonly kind: 'news';
  readonly clock: number;
  /** The streams that moved. */
  readonly versions: Versions;
}

/** The board's part of it: all that stands above the rows, and the rows that are not as they were. */
export interface Floor {
  readonly says: string;
  readonly groups: readonly FloorGroup[];
  readonly rows: readonly BoardCar[];
  /** What may begin, where it is not as it was told last. It comes after the rows, since it reads the stock. */
  readonly tray?: ReadyTray;
}

export interface FloorGroup extends Omit<BoardGroup, 'cars'> {
  /** In the order in which they stand. */
  readonly cars: readonly string[];
}

/** The session was ended or its person removed; the connection ends with it. */
export interface SignedOut {
  readonly kind: 'signed-out';
}

export type LiveMessage = Stand | News | SignedOut;

/** Longest silence of a server that is well; it sends a comment when it has nothing to say. */
export const HEARTBEAT_MS = 15_000;
