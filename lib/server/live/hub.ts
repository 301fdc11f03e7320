/**
 * Every open screen of this process follows the shop through here: one ear for all, each change looked at once, the
 * bytes of it made once and given to everybody. Other processes have hubs of their own on the same database.
 */
import 'server-only';
import { HEARTBEAT_MS } from '@/lib/wire/live';
import type { Floor as FloorNews, LiveMessage, Versions } from '@/lib/wire/live';
import { sessionsThatHold } from '@/lib/server/auth/session-row';
import { database } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { Floor } from './floor';
import { listenTo } from './listener';
import type { Listener } from './listener';
import { Watchers } from './watchers';

export interface HubTimes {
  /** How often the database is asked where all streams stand. */
  readonly askEvery: number;
  /** A removed or signed-out person sees nothing new after this. */
  readonly checkEvery: number;
  /** How often it is looked what time alone has changed. */
  readonly lookEvery: number;
  /** Deaf for so long, it says so to everybody by ending what is open. */
  readonly deafFor: number;
  /** The tray is told so long after the rows. */
  readonly trayAfter: number;
}

const TIMES: HubTimes = {
  askEvery: 5000,
  checkEvery: 4000,
  lookEvery: 20_000,
  deafFor: 5000,
  trayAfter: 400,
};
const READY_MS = 4000;

const encoder = new TextEncoder();
const bytesOf = (message: LiveMessage): Uint8Array => encoder.encode(`data: ${JSON.stringify(message)}\n\n`);
/** Some browsers hold back the first kilobyte of an answer. */
const PADDING = encoder.encode(`:${' '.repeat(2048)}\n\n`);
const HEARTBEAT = encoder.encode(':\n\n');
const GOODBYE = bytesOf({ kind: 'signed-out' });

export class LiveHub {
  readonly watchers = new Watchers();
  private readonly db: Database;
  private readonly floor: Floor;
  private readonly listener: Listener;
  private readonly timers: readonly NodeJS.Timeout[];
  private readonly deafFor: number;
  private readonly trayAfter: number;
  private trayTimer: NodeJS.Timeout | null = null;
  private readonly versions = new Map<string, number>();
  private clock = 0;
  private told = new Map<string, number>();
  private isLooking = false;
  private deafSince: number | null = performance.now();
  private isStopped = false;
  private isTroubled = false;
  private toldReady: () => void = () => undefined;
  private isReady = false;
  private readonly ready = new Promise<void>((resolve) => {
    this.toldReady = resolve;
  });

  constructor(db: Database, url: string, times: Partial<HubTimes> = {}) {
    const { askEvery, checkEvery, lookEvery, deafFor, trayAfter } = { ...TIMES, ...times };
    this.db = db;
    this.deafFor = deafFor;
    this.trayAfter = trayAfter;
    this.floor = new Floor(db);
    const ears = {
      heard: (stream: string, version: number) => this.hear([[stream, version]]),
      stand: (versions: ReadonlyMap<string, number>) => {
        this.deafSince = null;
        this.hear(versions);
      },
      lost: () => {
        this.deafSince ??= performance.now();
      },
    };
    this.listener = listenTo(url, ears, askEvery);
    this.timers = [
      setInterval(() => this.beat(), HEARTBEAT_MS),
      setInterval(() => void this.check(), checkEvery),
      setInterval(() => this.endIfDeaf(), 500),
      setInterval(() => void this.passTime(), lookEvery),
    ];
    for (const timer of this.timers) timer.unref();
  }

  /** Begins an answer; null where there is no room, or nothing is known just now: the browser asks again later. */
  async watch(session: string): Promise<ReadableStream<Uint8Array> | null> {
    let late: NodeJS.Timeout | undefined;
    await Promise.race([
      this.ready,
      new Promise((resolve) => {
        late = setTimeout(resolve, READY_MS);
      }),
    ]);
    clearTimeout(late);
    if (!this.isReady || this.isStopped || this.isDeaf() || !this.watchers.hasRoomFor(session)) return null;
    const stand = bytesOf({ kind: 'stand', clock: this.clock, versions: Object.fromEntries(this.versions) });
    return this.watchers.add(session, Buffer.concat([PADDING, stand]));
  }

  async stop(): Promise<void> {
    this.isStopped = true;
    for (const timer of this.timers) clearInterval(timer);
    if (this.trayTimer !== null) clearTimeout(this.trayTimer);
    this.watchers.closeAll();
    await this.listener.stop();
  }

  private hear(versions: Iterable<readonly [string, number]>): void {
    for (const [stream, version] of versions)
      if (version > Math.max(this.versions.get(stream) ?? 0, this.told.get(stream) ?? 0))
        this.told.set(stream, version);
    if (this.told.size > 0 || !this.isReady) void this.catchUp();
  }

  /** What is told while it looks waits for the next look, however much it is. */
  private async catchUp(): Promise<void> {
    if (this.isLooking) return;
    this.isLooking = true;
    try {
      while ((this.told.size > 0 || !this.isReady) && !this.isStopped) {
        const told = this.told;
        this.told = new Map();
        try {
          await this.tell(told);
        } catch (error) {
          for (const [stream, version] of told)
            this.told.set(stream, Math.max(version, this.told.get(stream) ?? 0));
          this.complain(error);
          await new Promise((resolve) => setTimeout(resolve, 250).unref());
          // A hub that can't read is as good as deaf; whoever watches is to know.
          this.deafSince ??= performance.now();
          continue;
        }
        this.isTroubled = false;
        if (!this.isReady) {
          this.isReady = true;
          this.toldReady();
        }
      }
    } finally {
      this.isLooking = false;
    }
  }

  private async tell(told: ReadonlyMap<string, number>): Promise<void> {
    const cars = new Map(
      [...told].flatMap(([stream, version]) =>
        stream.startsWith('car:') ? [[stream.slice(4), version] as const] : [],
      ),
    );
    const isShop = told.has('shop');
    const floor = await this.floor.look({ cars, shop: isShop });
    // Only now: whoever begins to watch while it is looked gets these news, and must not be told that they have them.
    for (const [stream, version] of told) {
      this.clock += version - (this.versions.get(stream) ?? 0);
      this.versions.set(stream, version);
    }
    this.send({ kind: 'news', clock: this.clock, versions: Object.fromEntries(told), ...floor });
    this.trayTimer ??= setTimeout(() => void this.tellTray(), this.trayAfter).unref();
    // It may be that somebody was removed.
    if (isShop) void this.check();
  }

  private send(message: LiveMessage & { readonly versions: Versions }): void {
    if (this.watchers.count > 0) this.watchers.send(bytesOf(message));
  }

  /** Once for all that happened in a while: it reads the stock, and no row waits for it. */
  private async tellTray(): Promise<void> {
    this.trayTimer = null;
    if (this.isStopped || this.watchers.count === 0) return;
    if (this.isLooking) {
      this.trayTimer = setTimeout(() => void this.tellTray(), this.trayAfter).unref();
      return;
    }
    await this.sayWhatIsNew(() => this.floor.tray());
  }

  private async passTime(): Promise<void> {
    if (this.isLooking || this.watchers.count === 0) return;
    await this.sayWhatIsNew(() => this.floor.later());
  }

  /** Nothing happened to any stream, and something may be shown otherwise. */
  private async sayWhatIsNew(look: () => Promise<FloorNews | null>): Promise<void> {
    this.isLooking = true;
    try {
      const floor = await look();
      if (floor !== null) this.send({ kind: 'news', clock: this.clock, versions: {}, ...floor });
    } catch (error) {
      this.complain(error);
    } finally {
      this.isLooking = false;
    }
    if (this.told.size > 0) void this.catchUp();
  }

  private beat(): void {
    if (!this.isDeaf()) this.watchers.send(HEARTBEAT);
  }

  private async check(): Promise<void> {
    const sessions = this.watchers.sessions();
    if (sessions.length === 0) return;
    try {
      const holding = await sessionsThatHold(this.db, sessions);
      this.watchers.dismiss(new Set(sessions.filter((session) => !holding.has(session))), GOODBYE);
    } catch (error) {
      this.complain(error);
    }
  }

  /** Once, until it is well again. */
  private complain(error: unknown): void {
    if (!this.isTroubled) complain(error);
    this.isTroubled = true;
  }

  private isDeaf(): boolean {
    return this.deafSince !== null && performance.now() - this.deafSince > this.deafFor;
  }

  private endIfDeaf(): void {
    if (this.isDeaf()) this.watchers.closeAll();
  }
}

const complain = (error: unknown): void => {
  console.error(
    JSON.stringify({ at: 'live hub', trouble: error instanceof Error ? error.message : 'unknown' }),
  );
};

// A development server loads this module anew after each edit; ears would pile up.
const kept = globalThis as { slipmarkLive?: LiveHub };

/** This process's hub. It begins to hear with the first who watches. */
export const liveHub = (): LiveHub => {
  if (kept.slipmarkLive !== undefined) return kept.slipmarkLive;
  const hub = new LiveHub(database(), process.env.DATABASE_URL ?? '');
  kept.slipmarkLive = hub;
  // The server waits for every answer before it ends, and these would not end by themselves.
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => void hub.stop());
  return hub;
};
