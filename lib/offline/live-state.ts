/** What a page knows of the shop through its line, as a plain value: each message makes the next one of it. */
import type { FloorGroup, LiveMessage, Versions } from '@/lib/wire/live';
import type { BoardCar, ReadyTray } from '@/lib/wire/views/board';

export type Touch = 'in-step' | 'out-of-touch' | 'signed-out';

export interface KnownRow {
  readonly row: BoardCar;
  /** The clock of the message that brought it. */
  readonly clock: number;
}

export interface LiveState {
  readonly touch: Touch;
  /** When the server was last heard, where it is heard no more. */
  readonly since: number | null;
  readonly clock: number;
  /** Where the clock stood when this connection began: what is shown must be at least of then. */
  readonly stood: number;
  readonly versions: Versions;
  readonly heads: {
    readonly clock: number;
    readonly says: string;
    readonly groups: readonly FloorGroup[];
  } | null;
  readonly tray: { readonly clock: number; readonly tray: ReadyTray } | null;
  readonly rows: ReadonlyMap<string, KnownRow>;
  /** Something happened while nobody listened, and the page was not asked for again since: the clock then. */
  readonly missed: number | null;
}

export const AT_FIRST: LiveState = {
  touch: 'in-step',
  since: null,
  clock: 0,
  stood: 0,
  versions: {},
  heads: null,
  tray: null,
  rows: new Map(),
  missed: null,
};

/** The state after a message. One that is older than what is known changes nothing. */
export const heard = (state: LiveState, message: LiveMessage): LiveState => {
  const { kind } = message;
  if (kind === 'signed-out') return { ...state, touch: 'signed-out', since: null };
  const versions = newest(state.versions, message.versions);
  if (kind === 'stand') {
    const isLater = state.clock > 0 && message.clock > state.clock;
    return {
      ...state,
      touch: 'in-step',
      since: null,
      clock: Math.max(state.clock, message.clock),
      stood: message.clock,
      versions,
      missed: isLater ? message.clock : state.missed,
    };
  }
  if (message.clock < state.clock) return { ...state, versions };
  const { clock, says, groups } = message;
  const tray = message.tray === undefined ? state.tray : { clock, tray: message.tray };
  const rows = new Map(state.rows);
  for (const row of message.rows)
    if ((rows.get(row.id)?.row.version ?? 0) <= row.version) rows.set(row.id, { row, clock });
  return { ...state, clock, versions, heads: { clock, says, groups }, tray, rows };
};

const newest = (before: Versions, now: Versions): Versions => {
  const found: Record<string, number> = { ...before };
  for (const [stream, version] of Object.entries(now)) found[stream] = Math.max(found[stream] ?? 0, version);
  return found;
};

/** What a page shows, as it told when it was made. */
export interface Shown {
  readonly versions?: Versions;
  /** The page shows the whole shop of this moment: any news is news to it. */
  readonly clock?: number;
  /** The same for a page that takes the news itself: only what came before the line was open is missing. */
  readonly stood?: number;
}

/** In what a page is behind, as a text that changes with each further news; empty where it is not. */
export const behind = (state: LiveState, shown: Iterable<Shown>): string => {
  const found: string[] = state.missed === null ? [] : [`all@${String(state.missed)}`];
  for (const { versions = {}, clock, stood } of shown) {
    for (const [stream, version] of Object.entries(versions)) {
      const known = state.versions[stream];
      if (known !== undefined && known > version) found.push(`${stream}@${String(known)}`);
    }
    if (clock !== undefined && state.clock > clock) found.push(`clock@${String(state.clock)}`);
    if (stood !== undefined && state.stood > stood) found.push(`stood@${String(state.stood)}`);
  }
  return found.join(' ');
};
