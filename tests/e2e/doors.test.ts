/** The command door over HTTP: every answer that it gives, and what it gives no answer to. */
import { connect } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { given, openDoors, secretsOf, somebody, FORM } from './doors-shop';
import type { Doors } from './doors-shop';

let doors: Doors;
beforeAll(async () => {
  doors = await openDoors();
});
beforeEach(async () => {
  await doors.above.query('DELETE FROM throttle');
});
afterAll(() => doors.close());

describe('the command door', () => {
  test('accepted, and the same again', async () => {
    const lead = await doors.signedIn('mara');
    const request = given(somebody(), { sequence: 1 });
    const first = await lead.command(request);
    expect(first).toMatchObject({ status: 200, body: { outcome: 'accepted', already: false, car: null } });
    expect(await lead.command(request)).toEqual({ status: 200, body: { ...first.body, already: true } });
    expect(await doors.count('event WHERE command = $1', request.command.id)).toBe(1);
  });

  test('fifty times at once is once', async () => {
    const lead = await doors.signedIn('mara');
    const request = given(somebody());
    const all = await Promise.all(Array.from({ length: 50 }, () => lead.command(request)));
    expect(all.every(({ status }) => status === 200)).toBe(true);
    expect(all.filter(({ body }) => body['already'] === false)).toHaveLength(1);
    expect(await doors.count('event WHERE command = $1', request.command.id)).toBe(1);
  });

  test('the same id for something else', async () => {
    const lead = await doors.signedIn('mara');
    const request = given(somebody());
    await lead.command(request);
    const other = { command: { ...request.command, claim: somebody() } };
    expect(await lead.command(other)).toMatchObject({ status: 422, body: { outcome: 'conflict' } });
  });

  test('refused, with every reason in words', async () => {
    const lead = await doors.signedIn('mara');
    const answer = await lead.command(
      given({ type: 'add-person', person: 'tobit', name: 'Tobit', roles: [] }),
    );
    expect(answer).toMatchObject({ status: 409, body: { outcome: 'refused', already: false } });
    const refusals = answer.body['refusals'] as readonly {
      readonly sentence: string;
      readonly refusal: { readonly code: string };
    }[];
    expect(refusals[0]?.refusal.code).toBe('already-there');
    expect(refusals[0]?.sentence).toMatch(/\w+ \w+/);
  });

  test('not allowed, and that is kept', async () => {
    const technician = await doors.signedIn('tobit');
    const request = given(somebody());
    const answer = await technician.command(request);
    expect(answer).toMatchObject({ status: 403, body: { outcome: 'not-allowed' } });
    expect(
      await doors.count(
        `command WHERE id = $1 AND actor = 'tobit' AND outcome = 'refused'`,
        request.command.id,
      ),
    ).toBe(1);
  });

  test('bad input, field by field, and nothing is kept', async () => {
    const lead = await doors.signedIn('mara');
    const before = await doors.count('command');
    const answer = await lead.command({
      command: { id: 'x', doneAt: 'now', claim: { type: 'add-person', boss: true } },
      actor: 'ada',
    });
    expect(answer).toMatchObject({ status: 400, body: { outcome: 'bad-input' } });
    const fields = (answer.body['fields'] as readonly { readonly field: string }[]).map(({ field }) => field);
    for (const field of [
      'command.id',
      'command.doneAt',
      'command.claim.person',
      'command.claim.boss',
      'actor',
    ])
      expect(fields).toContain(field);
    for (const [body, type, status] of [
      ['{', 'application/json', 400],
      ['{}', 'text/plain', 415],
      ['', 'application/json', 400],
      [JSON.stringify(given(somebody(), { pad: 'x'.repeat(1_100_000) })), 'application/json', 413],
    ] as const) {
      const other = await lead.post('/api/commands', body, type);
      expect(other.status).toBe(status);
      expect(JSON.parse(other.text)).toMatchObject({ outcome: 'bad-input' });
    }
    expect(await doors.count('command')).toBe(before);
  });

  test('a body that does not say how long it is, is counted as it comes', async () => {
    const lead = await doors.signedIn('mara');
    const { hostname, port } = new URL(doors.shop.address);
    const jar = [...lead.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const status = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(port), hostname);
      let heard = '';
      socket.on('data', (data) => {
        heard += String(data);
        if (heard.includes('\r\n')) {
          resolve(heard.split('\r\n')[0] ?? '');
          socket.destroy();
        }
      });
      socket.on('error', reject);
      socket.write(
        `POST /api/commands HTTP/1.1\r\nHost: ${hostname}:${port}\r\nOrigin: ${doors.shop.address}\r\nCookie: ${jar}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`,
      );
      const chunk = `1000\r\n${'x'.repeat(4096)}\r\n`;
      for (let nr = 0; nr < 300; nr += 1) socket.write(chunk);
      socket.write('0\r\n\r\n');
    });
    expect(status).toContain('413');
  });

  test('another origin is refused before anything is looked at', async () => {
    const lead = await doors.signedIn('mara');
    const request = given(somebody());
    const elsewhere: readonly Readonly<Record<string, string>>[] = [
      { origin: 'http://evil.test' },
      { origin: 'http://evil.test', 'sec-fetch-site': 'cross-site', 'x-forwarded-host': 'evil.test' },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
    ];
    for (const headers of elsewhere)
      expect(await lead.command(request, headers)).toMatchObject({
        status: 403,
        body: { outcome: 'not-allowed' },
      });
    const silent = await lead.ask('/api/commands', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(request),
    });
    expect(silent.status).toBe(403);
    expect(await doors.count('command WHERE id = $1', request.command.id)).toBe(0);
    for (const path of [
      '/api/sign-out',
      '/api/auth/callback/desk',
      '/api/enrol',
      '/api/set-up/enrolments',
      '/board',
      '/sign-in',
    ])
      expect((await lead.post(path, '', FORM, { origin: 'http://evil.test' })).status, path).toBe(403);
    expect((await lead.ask('/board')).status).toBe(200);
  });

  test('no act of a page’s own: an invented one is turned away', async () => {
    const lead = await doors.signedIn('mara');
    const answer = await lead.post('/board', '[]', 'text/plain;charset=UTF-8', {
      'next-action': 'a'.repeat(42),
    });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
  });

  test('a signature asks the signer’s PIN; five wrong ones rest it, here and for that signer only', async () => {
    const technician = await doors.signedIn('tobit');
    const sign = (person: string, pin: string) =>
      technician.command(
        given({ type: 'clear-lot', lot: 'no such lot', reason: 'x' }, { signer: { person, pin } }),
      );
    expect(await technician.command(given({ type: 'clear-lot', lot: 'x', reason: 'x' }))).toMatchObject({
      status: 400,
    });
    for (let nr = 0; nr < 4; nr += 1)
      expect(await sign('mara', '100294')).toMatchObject({
        status: 403,
        body: { outcome: 'wrong-pin', waitSeconds: null },
      });
    const fifth = await sign('mara', '100294');
    expect(fifth.body['waitSeconds']).toBeGreaterThan(20);
    expect(await sign('mara', secretsOf('mara').pin)).toMatchObject({ body: { outcome: 'wrong-pin' } });
    expect(await sign('ada', secretsOf('ada').pin)).toMatchObject({
      status: 409,
      body: { outcome: 'refused' },
    });
    expect((await doors.signedIn('mara')).cookies.has('slipmark.session')).toBe(true);
  });
});
