/** The line of a page while servers fall silent, go away and come back: by a clock that the test turns. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LiveLine } from '@/lib/offline/live-line';
import type { LiveMessage } from '@/lib/wire/live';

/** One try of the page to open its line. */
interface Try {
  readonly at: number;
  readonly signal: AbortSignal;
  readonly says: (message: LiveMessage) => void;
  /** Only that the line holds. */
  readonly beats: () => void;
  readonly ends: () => void;
}
type Answer = 'opens' | 'gone' | 401 | 204 | 503;

const tries: Try[] = [];
let answers: Answer;
let page: EventTarget & { visibilityState: 'visible' | 'hidden' };
let browser: EventTarget;
let line: LiveLine;
let leave: () => void;

const answer = (_address: string, { signal }: { readonly signal: AbortSignal }): Promise<Response> => {
  const bytes = new TextEncoder();
  let controller: ReadableStreamDefaultController<Uint8Array> | null = null;
  const body = new ReadableStream<Uint8Array>({
    start: (given) => {
      controller = given;
    },
  });
  const put = (text: string): void => controller?.enqueue(bytes.encode(text));
  tries.push({
    at: Date.now(),
    signal,
    says: (message) => put(`data: ${JSON.stringify(message)}\n\n`),
    beats: () => put(':\n\n'),
    ends: () => controller?.close(),
  });
  signal.addEventListener('abort', () => controller?.error(new Error('let go')));
  if (answers === 'gone') return Promise.reject(new TypeError('nobody there'));
  return Promise.resolve(
    answers === 'opens' ? new Response(body, { status: 200 }) : new Response(null, { status: answers }),
  );
};

const pass = (milliseconds: number): Promise<unknown> => vi.advanceTimersByTimeAsync(milliseconds);
const stand = (clock: number): LiveMessage => ({ kind: 'stand', clock, versions: {} });
const last = (): Try => {
  const found = tries.at(-1);
  if (found === undefined) throw new Error('nothing was asked yet');
  return found;
};

/** Seconds from this try to the next, and so on. */
const gapsSince = (first: number): readonly number[] =>
  tries.slice(first + 1).map(({ at }, index) => Math.round((at - (tries[first + index]?.at ?? at)) / 1000));

beforeEach(async () => {
  vi.useFakeTimers({ now: 1_000_000 });
  // As long as it may be; that it is uneven is not the matter here.
  vi.spyOn(Math, 'random').mockReturnValue(0.999_999);
  tries.length = 0;
  answers = 'opens';
  page = Object.assign(new EventTarget(), { visibilityState: 'visible' as const });
  browser = new EventTarget();
  vi.stubGlobal('document', page);
  vi.stubGlobal('window', browser);
  vi.stubGlobal('fetch', answer);
  line = new LiveLine();
  leave = line.subscribe(() => undefined);
  // No server answers in no time.
  await pass(20);
});
afterEach(async () => {
  leave();
  await pass(2000);
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe('a line that holds', () => {
  test('is opened once, however long the shop is quiet, as long as it beats', async () => {
    last().says(stand(4));
    for (let beat = 0; beat < 40; beat += 1) {
      await pass(15_000);
      last().beats();
    }
    await pass(0);
    expect(tries).toHaveLength(1);
    expect(line.current()).toMatchObject({ touch: 'in-step', clock: 4 });
  });

  test('and falls silent without a word is given up after forty seconds, and opened anew', async () => {
    last().says(stand(4));
    await pass(39_900);
    expect(last().signal.aborted).toBe(false);
    await pass(200);
    expect(tries[0]?.signal.aborted).toBe(true);
    await pass(700);
    expect(tries).toHaveLength(2);
    // The next one is heard within the grace: nobody was told that anything was wrong.
    last().says(stand(4));
    await pass(3000);
    expect(line.current().touch).toBe('in-step');
  });

  test('that comes back to a shop which moved on says that something was missed', async () => {
    last().says(stand(4));
    await pass(0);
    last().ends();
    await pass(700);
    last().says(stand(9));
    await pass(0);
    expect(line.current().missed).toBe(9);
    line.caughtUp(9);
    expect(line.current().missed).toBeNull();
  });
});

describe('a server that is gone', () => {
  test('is out of touch since it was last heard, and asked more and more rarely, never less than twice a minute', async () => {
    last().says(stand(4));
    await pass(0);
    const heardAt = Date.now();
    answers = 'gone';
    await pass(5000);
    last().ends();
    await pass(10 * 60_000);
    expect(line.current()).toMatchObject({ touch: 'out-of-touch', since: heardAt });
    const gaps = gapsSince(1);
    expect(gaps.slice(0, 6)).toEqual([2, 4, 8, 16, 30, 30]);
    expect(new Set(gaps.slice(4))).toEqual(new Set([30]));
    answers = 'opens';
    await pass(30_000);
    last().says(stand(4));
    await pass(0);
    expect(line.current()).toMatchObject({ touch: 'in-step', since: null });
  });

  test('no screen waits longer than half of that less: two hundred don’t come back in one moment', async () => {
    vi.mocked(Math.random).mockReturnValue(0);
    last().says(stand(4));
    await pass(10);
    answers = 503;
    last().ends();
    await pass(60_000);
    expect(gapsSince(1).slice(0, 4)).toEqual([1, 2, 4, 8]);
  });

  test('is asked at once when the network comes back', async () => {
    answers = 'gone';
    last().ends();
    await pass(60_000);
    const before = tries.length;
    browser.dispatchEvent(new Event('online'));
    await pass(0);
    expect(tries).toHaveLength(before + 1);
  });
});

describe('nothing is asked', () => {
  test('of a server that says nobody is signed in', async () => {
    answers = 401;
    last().ends();
    await pass(10 * 60_000);
    expect(tries).toHaveLength(2);
    expect(line.current().touch).toBe('signed-out');
  });

  test('for a page that nobody sees; it is opened again on sight', async () => {
    page.visibilityState = 'hidden';
    page.dispatchEvent(new Event('visibilitychange'));
    await pass(9900);
    expect(last().signal.aborted).toBe(false);
    await pass(200);
    expect(last().signal.aborted).toBe(true);
    await pass(10 * 60_000);
    expect(tries).toHaveLength(1);
    page.visibilityState = 'visible';
    page.dispatchEvent(new Event('visibilitychange'));
    await pass(0);
    expect(tries).toHaveLength(2);
  });

  test('once the last part of the page has left; a page that comes meanwhile takes the line over', async () => {
    const next = line.subscribe(() => undefined);
    leave();
    await pass(5000);
    expect(last().signal.aborted).toBe(false);
    next();
    await pass(1100);
    expect(last().signal.aborted).toBe(true);
    expect(tries).toHaveLength(1);
    leave = line.subscribe(() => undefined);
    await pass(0);
    expect(tries).toHaveLength(2);
  });
});
