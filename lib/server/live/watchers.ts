/** Those who look: each an open answer into which the same bytes are put. */
import 'server-only';

interface Open {
  readonly session: string;
  readonly controller: ReadableStreamDefaultController<Uint8Array>;
}

/** What may wait for one who reads slowly. More, and they are let go: they come back and are told where all stands. */
const MOST_WAITING = 256 * 1024;
const MOST_WATCHERS = 2000;
/** One person's tabs. */
const MOST_OF_ONE = 24;

export class Watchers {
  private readonly open = new Set<Open>();

  get count(): number {
    return this.open.size;
  }

  sessions(): readonly string[] {
    return [...new Set([...this.open].map(({ session }) => session))];
  }

  hasRoomFor(session: string): boolean {
    return (
      this.open.size < MOST_WATCHERS &&
      [...this.open].filter((each) => each.session === session).length < MOST_OF_ONE
    );
  }

  /** An answer that begins with these bytes and goes on with whatever is sent after this moment. */
  add(session: string, first: Uint8Array): ReadableStream<Uint8Array> {
    let mine: Open | null = null;
    return new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          mine = { session, controller };
          this.open.add(mine);
          controller.enqueue(first);
        },
        cancel: () => {
          if (mine !== null) this.open.delete(mine);
        },
      },
      new ByteLengthQueuingStrategy({ highWaterMark: MOST_WAITING }),
    );
  }

  send(bytes: Uint8Array): void {
    for (const each of this.open) {
      if ((each.controller.desiredSize ?? 0) >= bytes.length) each.controller.enqueue(bytes);
      else this.drop(each, new DOMException('This reader is too slow', 'AbortError'));
    }
  }

  /** Tells them why, and lets them go. */
  dismiss(sessions: ReadonlySet<string>, last: Uint8Array): void {
    for (const each of this.open) {
      if (!sessions.has(each.session)) continue;
      each.controller.enqueue(last);
      this.close(each);
    }
  }

  closeAll(): void {
    for (const each of this.open) this.close(each);
  }

  private close(each: Open): void {
    this.open.delete(each);
    each.controller.close();
  }

  /** What waits for them is thrown away too. */
  private drop(each: Open, because: DOMException): void {
    this.open.delete(each);
    each.controller.error(because);
  }
}
