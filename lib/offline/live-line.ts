/**
 * The one line of a page to its server: heard by whatever on the page follows the shop. Read by `fetch`, not by
 * EventSource, which tells neither 401 from a server that is gone, nor that bytes still come. A page that nobody sees
 * holds none: browsers allow six connections to a host, and a tablet has many tabs.
 */
import { messageReader } from './live-messages';
import { AT_FIRST, behind, heard } from './live-state';
import type { LiveState, Shown } from './live-state';

/** Between two heartbeats and a bit is silence; this is a line that is dead and does not know it. */
const SILENCE_MS = 40_000;
const REST_AFTER_HIDDEN_MS = 10_000;
/** A server that is started again is back after a moment; nobody needs to hear of it sooner. */
const GRACE_MS = 2500;
const LONGEST_MS = 30_000;

type Ending = 'ended' | 'signed-out' | 'not-wanted';

export class LiveLine {
  private state = AT_FIRST;
  private readonly changed = new Set<() => void>();
  private readonly shown = new Map<object, Shown>();
  private running: AbortController | null = null;
  private heardAt = 0;
  private wake: () => void = () => undefined;
  private hiding: ReturnType<typeof setTimeout> | undefined;
  private grace: ReturnType<typeof setTimeout> | undefined;

  readonly current = (): LiveState => this.state;

  /** In what the page is behind; empty where it is not. */
  readonly behind = (): string => behind(this.state, this.shown.values());

  /** The line is open as long as somebody hears. */
  readonly subscribe = (changed: () => void): (() => void) => {
    if (this.changed.size === 0) this.open();
    this.changed.add(changed);
    return () => {
      this.changed.delete(changed);
      // The next page of the same visit may be about to hear.
      setTimeout(() => {
        if (this.changed.size === 0) this.close();
      }, 1000);
    };
  };

  /** Part of the page shows this; gives how to take it back. */
  follow(shown: Shown): () => void {
    const token = {};
    this.shown.set(token, shown);
    this.tell();
    return () => {
      this.shown.delete(token);
      this.tell();
    };
  }

  /** Somebody is there again: a line that was let go is opened once more. */
  again(): void {
    if (this.changed.size > 0 && this.running === null) this.onSight();
  }

  /** The page was made anew, later than this clock. */
  caughtUp(clock: number): void {
    if (this.state.missed !== null && this.state.missed <= clock)
      this.become({ ...this.state, missed: null });
  }

  private become(state: LiveState): void {
    this.state = state;
    this.tell();
  }

  private tell(): void {
    for (const changed of this.changed) changed();
  }

  private open(): void {
    document.addEventListener('visibilitychange', this.onSight);
    window.addEventListener('online', this.onOnline);
    window.addEventListener('offline', this.lose);
    window.addEventListener('pagehide', this.rest);
    window.addEventListener('pageshow', this.onSight);
    this.onSight();
  }

  private close(): void {
    document.removeEventListener('visibilitychange', this.onSight);
    window.removeEventListener('online', this.onOnline);
    window.removeEventListener('offline', this.lose);
    window.removeEventListener('pagehide', this.rest);
    window.removeEventListener('pageshow', this.onSight);
    this.rest();
  }

  private readonly rest = (): void => {
    clearTimeout(this.hiding);
    this.running?.abort();
    this.running = null;
  };

  private readonly onSight = (): void => {
    clearTimeout(this.hiding);
    if (document.visibilityState === 'hidden') this.hiding = setTimeout(this.rest, REST_AFTER_HIDDEN_MS);
    else if (this.running === null) {
      this.running = new AbortController();
      if (this.heardAt === 0) this.heardAt = Date.now();
      void this.run(this.running.signal);
    } else this.wake();
  };

  private readonly onOnline = (): void => {
    this.wake();
  };

  private readonly lose = (): void => {
    if (this.state.touch === 'in-step')
      this.become({ ...this.state, touch: 'out-of-touch', since: this.heardAt });
  };

  private async run(signal: AbortSignal): Promise<void> {
    for (let failures = 0; !isOver(signal);) {
      const before = this.heardAt;
      clearTimeout(this.grace);
      this.grace = setTimeout(this.lose, GRACE_MS);
      const ending = await this.listen(signal);
      if (isOver(signal)) break;
      if (ending === 'signed-out') this.become({ ...this.state, touch: 'signed-out', since: null });
      if (ending === 'not-wanted') this.lose();
      if (ending !== 'ended') break;
      failures = this.heardAt > before ? 0 : failures + 1;
      if (failures > 0) this.lose();
      else this.grace = setTimeout(this.lose, GRACE_MS);
      await this.pause(failures);
    }
    clearTimeout(this.grace);
    if (this.running?.signal === signal) this.running = null;
  }

  /** Uneven, so that two hundred screens don't come back in one moment. */
  private pause(failures: number): Promise<void> {
    const longest = failures === 0 ? 600 : Math.min(LONGEST_MS, 1000 * 2 ** failures);
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, longest * (0.5 + Math.random() / 2));
      this.wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  private async listen(signal: AbortSignal): Promise<Ending> {
    const dead = new AbortController();
    const stop = (): void => dead.abort();
    signal.addEventListener('abort', stop);
    let watchdog = setTimeout(stop, SILENCE_MS);
    try {
      const answer = await fetch('/api/live', {
        headers: { accept: 'text/event-stream' },
        credentials: 'same-origin',
        cache: 'no-store',
        redirect: 'error',
        signal: dead.signal,
      });
      if (answer.status === 401) return 'signed-out';
      if (answer.status === 204) return 'not-wanted';
      if (!answer.ok || answer.body === null) return 'ended';
      const messages = messageReader();
      const text = new TextDecoder();
      const reader = answer.body.getReader();
      for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
        clearTimeout(watchdog);
        watchdog = setTimeout(stop, SILENCE_MS);
        clearTimeout(this.grace);
        this.heardAt = Date.now();
        // The browser took itself for offline, and the line held all the same.
        if (this.state.touch === 'out-of-touch')
          this.become({ ...this.state, touch: 'in-step', since: null });
        for (const message of messages(text.decode(piece.value, { stream: true }))) {
          this.become(heard(this.state, message));
          if (message.kind === 'signed-out') return 'signed-out';
        }
      }
      return 'ended';
    } catch {
      return 'ended';
    } finally {
      clearTimeout(watchdog);
      signal.removeEventListener('abort', stop);
      dead.abort();
    }
  }
}

/** Asked anew after each wait. */
const isOver = (signal: AbortSignal): boolean => signal.aborted;

/** This page's line. It opens when somebody first hears, which no server does. */
export const line = new LiveLine();
