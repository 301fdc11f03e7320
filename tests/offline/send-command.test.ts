import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { sendCommand } from '@/lib/offline/send-command';
import type { Claim } from '@/lib/domain/commands';
import type { DoorAnswer, DoorRequest } from '@/lib/wire/door';

const CLAIM: Claim = { type: 'snug-joint', car: 'C54-011', joint: 'J-110@L', cycle: 1 };
const ACCEPTED = { outcome: 'accepted', already: false, car: 'C54-011', version: 7 };
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

type Reply = DoorAnswer | 'cut' | 'html';

/** A door that gives these replies in turn, the last one for ever; `sent` keeps every body that reached it. */
const door = (...replies: readonly Reply[]): { sent: string[]; asked: DoorRequest[] } => {
  const sent: string[] = [];
  const asked: DoorRequest[] = [];
  vi.stubGlobal('fetch', (_: string, init: { body: string; signal: AbortSignal }) => {
    sent.push(init.body);
    asked.push(JSON.parse(init.body) as DoorRequest);
    const reply = replies[Math.min(sent.length, replies.length) - 1] ?? 'cut';
    if (reply === 'cut') return Promise.reject(new TypeError('Failed to fetch'));
    if (reply === 'html') return Promise.resolve(new Response('<h1>Bad gateway</h1>', { status: 502 }));
    return Promise.resolve(Response.json(reply, { status: reply.outcome === 'busy' ? 503 : 200 }));
  });
  return { sent, asked };
};

const store = (): { rows: Map<string, string> } => {
  const rows = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => rows.get(key) ?? null,
    setItem: (key: string, value: string) => rows.set(key, value),
  });
  return { rows };
};

beforeEach(() => {
  vi.useFakeTimers({ now: Date.parse('2026-11-27T10:52:00.000Z') });
  store();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const after = async <T>(sending: Promise<T>): Promise<T> => {
  await vi.runAllTimersAsync();
  return sending;
};

describe('sendCommand', () => {
  it('makes a UUID without randomUUID, which plain http lacks', async () => {
    vi.stubGlobal('crypto', { getRandomValues: globalThis.crypto.getRandomValues.bind(globalThis.crypto) });
    const { asked } = door(ACCEPTED as DoorAnswer);
    expect(await after(sendCommand(CLAIM))).toEqual(ACCEPTED);
    expect(asked[0]?.command.id).toMatch(UUID);
    expect(asked[0]?.command).toMatchObject({ claim: CLAIM, doneAt: '2026-11-27T10:52:00.000Z' });
  });

  it('asks again with the very same words after a cut, a page of a proxy, and a busy server', async () => {
    const { sent } = door('cut', 'html', { outcome: 'busy', says: 'later' }, ACCEPTED as DoorAnswer);
    const tries: number[] = [];
    const answer = await after(sendCommand(CLAIM, { onRetry: (each) => tries.push(each) }));
    expect(answer).toEqual(ACCEPTED);
    expect(sent).toHaveLength(4);
    expect(new Set(sent).size).toBe(1);
    expect(tries).toEqual([1, 2, 3]);
  });

  it('takes the answer of an earlier try as the answer', async () => {
    door('cut', { ...ACCEPTED, already: true } as DoorAnswer);
    expect(await after(sendCommand(CLAIM))).toEqual({ ...ACCEPTED, already: true });
  });

  it('says after half a minute that nobody knows, never that it failed, and can be asked again', async () => {
    const { sent } = door(...Array.from({ length: 8 }, (): Reply => 'cut'), ACCEPTED as DoorAnswer);
    const begun = Date.now();
    const answered = sendCommand(CLAIM).then((answer) => ({ answer, after: Date.now() - begun }));
    const { answer, after: took } = await after(answered);
    expect(took).toBe(27_000);
    expect(answer.outcome).toBe('unknown');
    if (answer.outcome !== 'unknown') return;
    expect(answer.says).not.toMatch(/fail/i);
    expect(sent).toHaveLength(8);
    expect(await after(answer.again())).toEqual(ACCEPTED);
    expect(new Set(sent).size).toBe(1);
  });

  it('waits between tries about 1, 2, 4 and then 5 seconds', async () => {
    const { sent } = door('cut');
    void sendCommand(CLAIM);
    const seen: number[] = [];
    for (let second = 0; second <= 27; second += 1) {
      await vi.advanceTimersByTimeAsync(second === 0 ? 0 : 1000);
      seen.push(sent.length);
    }
    expect([0, 1, 3, 7, 12, 17, 22, 27].map((second) => seen[second])).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  it.each(['not-signed-in', 'wrong-pin', 'not-allowed'] as const)(
    '%s after a lost answer does not say that nothing was recorded',
    async (outcome) => {
      const refused = { outcome, says: 'Sign in.', waitSeconds: null } as DoorAnswer;
      door('cut', refused);
      const answer = await after(sendCommand(CLAIM));
      expect(answer.outcome).toBe('unknown');
      door(refused);
      expect(await after(sendCommand(CLAIM))).toEqual(refused);
    },
  );

  it.each([
    { outcome: 'refused', already: false, refusals: [] },
    { outcome: 'conflict', says: 'another command' },
    { outcome: 'bad-input', fields: [] },
  ] as const)('hands on $outcome at once', async (answer) => {
    const { sent } = door(answer);
    expect(await after(sendCommand(CLAIM))).toEqual(answer);
    expect(sent).toHaveLength(1);
  });

  it('believes no answer whose shape it does not know', async () => {
    const { sent } = door({ outcome: 'constructor' } as unknown as DoorAnswer, ACCEPTED as DoorAnswer);
    await after(sendCommand(CLAIM));
    expect(sent).toHaveLength(2);
  });

  it('keeps an id and a time that were made before', async () => {
    const { asked } = door(ACCEPTED as DoorAnswer);
    const id = '5a4c1d9e-0b1a-4f6e-8a52-4b1f7f3f9a10';
    await after(sendCommand(CLAIM, { id, doneAt: '2026-11-27T09:00:00.000Z', retryOf: 'x' }));
    expect(asked[0]?.command).toMatchObject({ id, doneAt: '2026-11-27T09:00:00.000Z', retryOf: 'x' });
  });

  it('counts up on the device, once for each command and not for each try', async () => {
    const { rows } = store();
    const { asked } = door('cut', ACCEPTED as DoorAnswer);
    await after(sendCommand(CLAIM));
    await after(sendCommand(CLAIM));
    expect(asked.map(({ sequence }) => sequence)).toEqual([1, 1, 2]);
    expect([...rows.values()]).toEqual(['2']);
  });

  it('gives no number where the browser keeps nothing', async () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new Error('SecurityError');
      },
    });
    const { asked } = door(ACCEPTED as DoorAnswer);
    await after(sendCommand(CLAIM));
    expect(asked[0]).not.toHaveProperty('sequence');
  });

  it('sends the PIN beside the command, not in it', async () => {
    const { asked } = door(ACCEPTED as DoorAnswer);
    await after(sendCommand(CLAIM, { signer: { person: 'tobit', pin: '135790' } }));
    expect(asked[0]?.signer).toEqual({ person: 'tobit', pin: '135790' });
    expect(JSON.stringify(asked[0]?.command)).not.toContain('135790');
  });
});
