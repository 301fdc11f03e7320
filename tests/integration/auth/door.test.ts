/** The command door behind its HTTP: who acts, who was there, which clock is believed, and what is said. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { answerTo } from '@/lib/server/door';
import { setCredential } from '@/lib/server/auth/credentials';
import { seatOf } from '@/lib/server/auth/session-row';
import type { Claim } from '@/lib/domain/commands';
import type { DoorAnswer, DoorRequest } from '@/lib/wire/door';
import { readDoorRequest } from '@/lib/wire/door-schema';
import { SECRETS, authShop, knownDevice } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
beforeAll(async () => {
  shop = await authShop();
});
beforeEach(() => shop.reset());
afterAll(() => shop.close());

const ago = (seconds: number): string => new Date(Date.now() - seconds * 1000).toISOString();

type More = Partial<DoorRequest['command']> & Pick<DoorRequest, 'signer' | 'sequence'>;

const requestOf = (claim: Claim, { signer, sequence, ...command }: More = {}): DoorRequest => ({
  command: { id: randomUUID(), doneAt: ago(1), claim, ...command },
  ...(signer === undefined ? {} : { signer }),
  ...(sequence === undefined ? {} : { sequence }),
});

interface Seated {
  readonly device: string;
  readonly give: (request: DoorRequest) => Promise<DoorAnswer>;
}

const seated = async (person: string): Promise<Seated> => {
  const { session } = await knownDevice(shop.db, person);
  const first = await seatOf(shop.db, session);
  return {
    device: first?.device ?? '',
    // Looked up anew for each command, as for each request.
    give: async (request) => {
      const seat = await seatOf(shop.db, session);
      if (seat === null) throw new Error('nobody is signed in');
      return answerTo(shop.db, request, seat);
    },
  };
};

const addPerson = (person: string): Claim => ({
  type: 'add-person',
  person,
  name: `Name of ${person}`,
  roles: ['technician'],
});

const metaOf = async (command: string): Promise<Record<string, unknown>> => {
  const [event] = await shop.db.event.findMany({ where: { commandId: command } });
  const body = JSON.parse(event?.body ?? '{}') as { event?: { meta?: Record<string, unknown> } };
  return body.event?.meta ?? {};
};

describe('who acts', () => {
  test('without a signature: who is signed in, on their device', async () => {
    const mara = await seated('mara');
    const request = requestOf(addPerson('p-1'));
    expect(await mara.give(request)).toMatchObject({ outcome: 'accepted', already: false });
    expect(await metaOf(request.command.id)).toMatchObject({ by: 'mara', device: mara.device });
    const row = await shop.db.command.findUniqueOrThrow({ where: { id: request.command.id } });
    expect(row).toMatchObject({ actor: 'mara', present: null, device: mara.device });
  });

  test('with one: whose PIN was given; who is signed in is kept as having been there', async () => {
    const tobit = await seated('tobit');
    const mara = await seated('mara');
    await mara.give(requestOf({ type: 'receive-lot', lot: 'L-1', item: 'bolt', quantity: 10 }));
    await tobit.give(requestOf({ type: 'quarantine-lot', lot: 'L-1', reason: 'wrong marks' }));
    const clear = requestOf(
      { type: 'clear-lot', lot: 'L-1', reason: 'measured' },
      { signer: { person: 'mara', pin: SECRETS.mara.pin } },
    );
    expect(await tobit.give(clear)).toMatchObject({ outcome: 'accepted' });
    const row = await shop.db.command.findUniqueOrThrow({ where: { id: clear.command.id } });
    expect(row).toMatchObject({ actor: 'mara', present: 'tobit', device: tobit.device });
  });

  test('who gets other roles comes in anew; who gives them stays, and a refused change ends nothing', async () => {
    const [ada, mara, ines] = [await seated('ada'), await seated('mara'), await knownDevice(shop.db, 'ines')];
    const roles: Claim = { type: 'change-roles', person: 'ines', roles: ['technician', 'lead'] };
    expect(await mara.give(requestOf(roles))).toMatchObject({ outcome: 'not-allowed' });
    expect(await seatOf(shop.db, ines.session)).not.toBeNull();
    expect(await ada.give(requestOf(roles))).toMatchObject({ outcome: 'accepted' });
    expect(await seatOf(shop.db, ines.session)).toBeNull();
    expect(await seatOf(shop.other, ines.session)).toBeNull();
    expect(await ada.give(requestOf({ ...roles, roles: ['technician'] }))).toMatchObject({
      outcome: 'accepted',
    });
  });

  test('a signature without a signer is no input; nothing is kept', async () => {
    const mara = await seated('mara');
    const request = requestOf({ type: 'clear-lot', lot: 'L-1', reason: 'x' });
    expect(await mara.give(request)).toMatchObject({ outcome: 'bad-input', fields: [{ field: 'signer' }] });
    expect(await shop.db.command.findUnique({ where: { id: request.command.id } })).toBeNull();
  });

  test('a wrong PIN stores no answer and counts; the same id with the right one goes on', async () => {
    const tobit = await seated('tobit');
    const right = requestOf(
      { type: 'clear-lot', lot: 'L-9', reason: 'x' },
      { signer: { person: 'ines', pin: SECRETS.ines.pin } },
    );
    const wrong = { ...right, signer: { person: 'ines', pin: '100294' } };
    expect(await tobit.give(wrong)).toEqual({
      outcome: 'wrong-pin',
      says: 'This is not Ines Harrow’s PIN. Nothing was signed.',
      waitSeconds: null,
    });
    expect(await shop.db.command.findUnique({ where: { id: right.command.id } })).toBeNull();
    expect(await shop.db.throttle.findMany({ where: { person: 'ines' } })).toMatchObject([
      { place: tobit.device, wrong: 1 },
    ]);
    // She may not clear lots: that is an answer, and it is kept.
    expect(await tobit.give(right)).toMatchObject({ outcome: 'not-allowed' });
    expect(await shop.db.command.findUnique({ where: { id: right.command.id } })).toMatchObject({
      outcome: 'refused',
    });
  });

  test('the fifth wrong one says how long to wait, and the right one is not looked at', async () => {
    const tobit = await seated('tobit');
    const sign = (pin: string) =>
      tobit.give(
        requestOf({ type: 'clear-lot', lot: 'L-1', reason: 'x' }, { signer: { person: 'mara', pin } }),
      );
    for (let nr = 0; nr < 4; nr += 1) await sign('100294');
    const fifth = await sign('100294');
    expect(
      fifth.outcome === 'wrong-pin' && (fifth.waitSeconds ?? 0) > 20 && (fifth.waitSeconds ?? 99) <= 30,
    ).toBe(true);
    expect(await sign(SECRETS.mara.pin)).toMatchObject({ outcome: 'wrong-pin' });
  });

  test('a signer who has left, or never was, can’t sign', async () => {
    const mara = await seated('mara');
    await mara.give(requestOf(addPerson('leaver')));
    await setCredential(shop.db, 'leaver', { pin: '730158' });
    await mara.give(requestOf({ type: 'remove-person', person: 'leaver' }));
    const sign = (person: string) =>
      mara.give(
        requestOf({ type: 'clear-lot', lot: 'L-1', reason: 'x' }, { signer: { person, pin: '730158' } }),
      );
    expect(await sign('leaver')).toMatchObject({ outcome: 'not-allowed' });
    expect(await sign('never-was')).toMatchObject({ outcome: 'wrong-pin' });
  });

  test('whoever has no PIN yet is told how to get one', async () => {
    const mara = await seated('mara');
    await mara.give(requestOf(addPerson('newcomer')));
    const answer = await mara.give(
      requestOf(
        { type: 'clear-lot', lot: 'L-1', reason: 'x' },
        { signer: { person: 'newcomer', pin: '730158' } },
      ),
    );
    expect(answer.outcome === 'wrong-pin' ? answer.says : '').toContain('has no PIN yet');
  });
});

describe('which clock', () => {
  test('the device’s own, while it says nothing impossible', async () => {
    const mara = await seated('mara');
    const request = requestOf(addPerson('p-2'), { doneAt: ago(600), sequence: 1 });
    await mara.give(request);
    expect(await metaOf(request.command.id)).toMatchObject({
      at: request.command.doneAt,
      clockDoubted: false,
    });
  });

  test('the server’s, where it lies before the last contact, after now, or out of order', async () => {
    const mara = await seated('mara');
    await mara.give(requestOf(addPerson('p-3'), { sequence: 5 }));
    const before = requestOf(addPerson('p-4'), { doneAt: ago(600), sequence: 6 });
    await mara.give(before);
    const after = requestOf(addPerson('p-5'), { doneAt: ago(-600), sequence: 7 });
    await mara.give(after);
    await new Promise((resolve) => setTimeout(resolve, 20));
    const overtaken = requestOf(addPerson('p-6'), { doneAt: ago(0), sequence: 4 });
    await mara.give(overtaken);
    for (const { command } of [before, after, overtaken])
      expect(await metaOf(command.id)).toMatchObject({ clockDoubted: true });
  });

  test('asked again with the same number it is in order still', async () => {
    const mara = await seated('mara');
    await mara.give(requestOf(addPerson('p-7'), { sequence: 3 }));
    await new Promise((resolve) => setTimeout(resolve, 20));
    const request = requestOf(addPerson('p-8'), { doneAt: ago(0), sequence: 3 });
    await mara.give(request);
    expect(await metaOf(request.command.id)).toMatchObject({ clockDoubted: false });
  });
});

describe('what is said', () => {
  test('once done, the same again; the same id with other words is a conflict', async () => {
    const mara = await seated('mara');
    const request = requestOf(addPerson('p-9'));
    const first = await mara.give(request);
    expect(await mara.give(request)).toEqual({ ...first, already: true });
    const other = { ...request, command: { ...request.command, claim: addPerson('p-10') } };
    expect(await mara.give(other)).toMatchObject({ outcome: 'conflict' });
    const elsewhere = await seated('mara');
    expect(await elsewhere.give(request)).toMatchObject({ outcome: 'conflict' });
  });

  test('every reason in words; who may not at all hears only that', async () => {
    const mara = await seated('mara');
    const tobit = await seated('tobit');
    const refused = await mara.give(requestOf(addPerson('tobit')));
    expect(refused.outcome === 'refused' ? refused.refusals[0]?.sentence : '').toMatch(/already|there/);
    const answer = await tobit.give(requestOf(addPerson('p-11')));
    expect(answer).toMatchObject({ outcome: 'not-allowed' });
    expect(answer.outcome === 'not-allowed' ? answer.says : '').toContain('a lead or an owner');
  });
});

describe('what can be read', () => {
  const good = requestOf(addPerson('p-12'), { sequence: 3 });
  const faults = (text: string): readonly string[] => {
    const read = readDoorRequest(text, 'Europe/London');
    return read.ok ? [] : read.error.map(({ field }) => field);
  };
  const but = (part: object): string => JSON.stringify({ ...good, ...part });
  const command = (part: object): string => but({ command: { ...good.command, ...part } });

  test('a whole request', () => {
    expect(readDoorRequest(JSON.stringify(good), 'Europe/London')).toEqual({ ok: true, value: good });
  });

  test.each<[string, string, readonly string[]]>([
    ['no JSON', '{', ['']],
    ['nothing', '', ['']],
    ['a list', '[]', ['']],
    ['a field twice', `{"command":1,${JSON.stringify(good).slice(1)}`, ['']],
    ['a field twice, spelled otherwise', `{"comman\\u0064":1,${JSON.stringify(good).slice(1)}`, ['']],
    ['a prototype', `{"__proto__":{"admin":true},${JSON.stringify(good).slice(1)}`, ['']],
    ['a number beyond all bounds', JSON.stringify(good).replace('"sequence":3', '"sequence":1e400'), ['']],
    ['half a character', JSON.stringify(good).replace('Name', 'Na\\ud800me'), ['']],
    ['an unknown field', but({ actor: 'ada' }), ['actor']],
    ['an unknown field of the command', command({ by: 'ada' }), ['command.by']],
    [
      'an unknown field of the claim',
      command({ claim: { ...good.command.claim, left: false } }),
      ['command.claim.left'],
    ],
    ['an unknown command', command({ claim: { type: 'add-persn' } }), ['command.claim.type']],
    [
      'a word of every object for a command',
      command({ claim: { type: 'constructor' } }),
      ['command.claim.type'],
    ],
    ['no UUID', command({ id: 'line-1' }), ['command.id']],
    ['no time', command({ doneAt: 'yesterday' }), ['command.doneAt']],
    ['a time without a zone', command({ doneAt: '2026-11-25T08:00:00.000' }), ['command.doneAt']],
    ['a day that is none', command({ doneAt: '2026-02-30T08:00:00.000Z' }), ['command.doneAt']],
    ['a fraction for a number', but({ sequence: 1.5 }), ['sequence']],
    ['a number too large to count', but({ sequence: 2 ** 53 }), ['sequence']],
    ['a PIN of five', but({ signer: { person: 'ines', pin: '12345' } }), ['signer.pin']],
    ['a PIN as a number', but({ signer: { person: 'ines', pin: 123456 } }), ['signer.pin']],
    ['NUL in a text', command({ claim: { ...good.command.claim, name: 'a\0b' } }), ['command.claim.name']],
    [
      'several at once',
      command({ id: 'x', claim: { type: 'add-person', roles: ['boss'] } }),
      ['command.id', 'command.claim.person', 'command.claim.name', 'command.claim.roles[0]'],
    ],
  ])('%s is told by its field', (_, text, fields) => {
    expect(faults(text)).toEqual(fields);
  });

  test('a million brackets are an answer, not a fall', () => {
    expect(faults('['.repeat(60_000) + ']'.repeat(60_000))).toEqual(['']);
  });
});
