/** Signing in and out over HTTP, as a stranger's tool would use it; who is in, and who no longer. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { someFreePort } from '@/lib/cli/starting/free-port';
import { serve } from '@/lib/cli/starting/serve';
import type { Server } from '@/lib/cli/starting/serve';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { PAGES, ROOT } from '@/tests/support/browser-global';
import type { Client } from './doors-client';
import { FORM, given, openDoors, secretsOf, somebody } from './doors-shop';
import type { Doors } from './doors-shop';

let doors: Doors;
beforeAll(async () => {
  doors = await openDoors();
});
beforeEach(async () => {
  await doors.above.query('DELETE FROM throttle');
});
afterAll(() => doors.close());

describe('signing in', () => {
  test('gives a cookie that no script reads, new for each sign-in', async () => {
    const client = doors.client();
    client.cookies.set('slipmark.session', 'planted');
    const page = await client.ask('/sign-in?at=bench');
    const token = /name="csrfToken" value="([0-9a-f]+)"/.exec(page.text)?.[1] ?? '';
    const form = new URLSearchParams({
      csrfToken: token,
      callbackUrl: '/board',
      name: 'tobit',
      secret: secretsOf('tobit').pin,
    });
    const answer = await client.post('/api/auth/callback/bench', form.toString(), FORM);
    const line = answer.headers.getSetCookie().find((each) => each.startsWith('slipmark.session=')) ?? '';
    expect(line).toMatch(/; HttpOnly/i);
    expect(line).toMatch(/; SameSite=lax/i);
    expect(line).toMatch(/; Path=\//i);
    expect(line).not.toMatch(/; Secure/i);
    expect(client.cookies.get('slipmark.session')).not.toBe('planted');
    expect((await client.ask('/board')).status).toBe(200);
  });

  test('leads on to where one wanted to go, inside the shop only', async () => {
    const { pin } = secretsOf('tobit');
    const to = (callbackUrl: string): Promise<string> =>
      doors.client().signIn('bench', 'tobit', pin, { callbackUrl });
    expect(await to('/cars/C54-011?x=1')).toBe('/cars/C54-011?x=1');
    for (const evil of [
      '//evil.test',
      'https://evil.test/',
      'https:evil',
      '/\\evil.test',
      'javascript:alert(1)',
      'not an address',
    ])
      expect(await to(evil), evil).toBe('/board');
  });

  test('says the same for a wrong PIN, a wrong name, the wrong door', async () => {
    const client = doors.client();
    expect(await client.signIn('bench', 'tobit', '100294')).toBe('/sign-in?at=bench&says=wrong&name=tobit');
    expect(await client.signIn('bench', 'nobody', '100294')).toBe('/sign-in?at=bench&says=wrong&name=nobody');
    expect(await client.signIn('bench', 'mara', secretsOf('mara').pin)).toBe(
      '/sign-in?at=bench&says=wrong&name=mara',
    );
    expect(await client.signIn('desk', 'tobit', secretsOf('tobit').password)).toBe(
      '/sign-in?at=desk&says=wrong&name=tobit',
    );
  });

  test('takes nothing but its own form from its own page', async () => {
    const client = doors.client();
    const { pin } = secretsOf('tobit');
    expect(await client.signIn('bench', 'tobit', pin, { csrfToken: 'f'.repeat(64) })).toContain('says=form');
    const noCookie = doors.client();
    const answer = await noCookie.post(
      '/api/auth/callback/bench',
      `name=tobit&secret=${pin}&csrfToken=${'f'.repeat(64)}`,
      FORM,
    );
    expect(answer.headers.get('location')).toContain('says=form');
    for (const type of ['application/json', 'text/plain', 'multipart/form-data; boundary=x'])
      expect((await client.post('/api/auth/callback/bench', '{}', type)).status).toBe(400);
    expect((await client.post('/api/auth/callback/bench', 'x'.repeat(20_000), FORM)).status).toBe(400);
    for (const path of ['signin', 'signin/desk', 'callback/google', 'signout', 'session', '_log', 'csrf'])
      expect((await client.post(`/api/auth/${path}`, '', FORM)).status, path).toBe(404);
    for (const path of ['session', 'csrf', 'providers', 'signin', 'error', 'callback/desk'])
      expect((await client.ask(`/api/auth/${path}`)).status, path).toBeGreaterThanOrEqual(404);
  });

  test('rests after five wrong ones, and the throttle is one for two instances', async () => {
    const port = await someFreePort();
    const second: Server = serve({
      root: ROOT,
      folder: PAGES,
      port,
      environment: {
        DATABASE_URL: doors.shop.database.url,
        NEXTAUTH_URL: `http://127.0.0.1:${String(port)}`,
        NEXTAUTH_SECRET: 'only for tests',
      },
      hear: () => undefined,
    });
    await second.open;
    try {
      const here = doors.client();
      const there = here.copy(second.address);
      const said: string[] = [];
      for (let nr = 0; nr < 5; nr += 1)
        said.push(await (nr % 2 === 0 ? here : there).signIn('bench', 'ines', `10029${String(nr)}`));
      expect(said.map((to) => /says=(\w+)/.exec(to)?.[1])).toEqual([
        'wrong',
        'wrong',
        'wrong',
        'wrong',
        'resting',
      ]);
      for (const client of [here, there])
        expect(await client.signIn('bench', 'ines', secretsOf('ines').pin)).toContain('says=resting');
      expect((await here.ask('/sign-in?at=bench&name=ines')).text).toContain('rests until');
    } finally {
      await second.stop();
    }
  });
});

describe('who is in', () => {
  test('after signing out the old cookie is worth nothing', async () => {
    const client = await doors.signedIn('tobit');
    const thief = client.copy();
    const out = await client.post('/api/sign-out', '', FORM);
    expect([out.status, out.headers.get('location')]).toEqual([
      303,
      `${doors.shop.address}/sign-in?says=out`,
    ]);
    expect(client.cookies.has('slipmark.session')).toBe(false);
    expect((await thief.ask('/board')).status).toBe(307);
    expect(await thief.command(given(somebody()))).toMatchObject({
      status: 401,
      body: { outcome: 'not-signed-in' },
    });
  });

  test('signing in as somebody else in the same browser ends the session before', async () => {
    const client = doors.client();
    const page = await client.ask('/sign-in?at=bench');
    const csrfToken = /name="csrfToken" value="([0-9a-f]+)"/.exec(page.text)?.[1] ?? '';
    const enter = (name: string): ReturnType<Client['post']> => {
      const form = new URLSearchParams({
        csrfToken,
        callbackUrl: '/board',
        name,
        secret: secretsOf(name).pin,
      });
      return client.post('/api/auth/callback/bench', form.toString(), FORM);
    };
    await enter('tobit');
    const before = client.copy();
    expect((await before.ask('/board')).status).toBe(200);
    await enter('ines');
    expect((await client.ask('/board')).status).toBe(200);
    expect((await before.ask('/board')).status).toBe(307);
  });

  test('whoever is removed is out with the next request', async () => {
    const lead = await doors.signedIn('mara');
    const technician = await doors.signedIn('oswin');
    expect((await technician.ask('/board')).status).toBe(200);
    expect(await lead.command(given({ type: 'remove-person', person: 'oswin' }))).toMatchObject({
      status: 200,
    });
    expect((await technician.ask('/board')).status).toBe(307);
    expect(
      (await technician.command(given({ type: 'add-note', car: 'C54-011', of: 'car', text: 'x' }))).status,
    ).toBe(401);
    expect(await doors.client().signIn('bench', 'oswin', secretsOf('oswin').pin)).toContain('says=wrong');
  });

  test.each([
    ['made up', 'eyJhbGciOiJub25lIn0.eyJzZXNzaW9uIjoiYWJjIn0.'],
    ['signed, not sealed', 'eyJhbGciOiJIUzI1NiJ9.eyJzZXNzaW9uIjoiYWJjIn0.AAAA'],
    ['half an escape', '%E0%A4%A'],
    ['five kilobytes', 'A'.repeat(5120)],
    ['a quote', '"'],
  ])('a cookie that is %s is nobody’s, and no fault of ours', async (_, cookie) => {
    const client = doors.client();
    client.cookies.set('slipmark.session', cookie);
    expect((await client.ask('/board')).status).toBe(307);
    expect((await client.command(given(somebody()))).status).toBe(401);
  });

  test.each([
    'Bearer %E0%A4%A',
    'Bearer',
    'Bearer eyJhbGciOiJub25lIn0.eyJzdWIiOiJhZGEifQ.',
    'Basic YWRhOmFkYQ==',
  ])('a header is no way in: %s', async (authorization) => {
    const client = doors.client();
    expect((await client.command(given(somebody()), { authorization })).status).toBe(401);
    expect((await client.ask('/board', { headers: { authorization } })).status).toBe(307);
  });

  test('broken cookies of every kind end in no fault', async () => {
    for (const name of ['slipmark.form', 'slipmark.device', 'slipmark.back', 'slipmark-theme']) {
      const client = doors.client();
      client.cookies.set(name, '%E0%A4%A|"<script>');
      expect((await client.ask('/sign-in')).status, name).toBe(200);
      client.cookies.set(name, 'garbage');
      expect(await client.signIn('bench', 'tobit', secretsOf('tobit').pin), name).toBe('/board');
    }
  });
});

describe('links', () => {
  test('a lead makes one, the person uses it once; a technician makes none, a lead none for an owner', async () => {
    const lead = await doors.signedIn('mara');
    const make = async (
      client: Client,
      person: string,
    ): Promise<{ readonly status: number; readonly link: string }> => {
      const answer = await client.post(
        '/api/set-up/enrolments',
        JSON.stringify({ person }),
        'application/json',
      );
      return {
        status: answer.status,
        link: (JSON.parse(answer.text) as { readonly link?: string }).link ?? '',
      };
    };
    expect((await make(await doors.signedIn('tobit'), 'ines')).status).toBe(403);
    expect((await make(lead, 'ada')).status).toBe(403);
    expect((await make(lead, 'nobody')).status).toBe(409);
    const { link } = await make(lead, 'ines');
    const ines = await doors.signedIn('ines');
    const browser = doors.client();
    expect((await browser.ask(link)).text).toContain('Ines Harrow');
    const token = new URL(link).searchParams.get('token') ?? '';
    const set = (fields: Readonly<Record<string, string>>) =>
      browser.post('/api/enrol', new URLSearchParams({ token, ...fields }).toString(), FORM);
    expect((await set({ pin: '123456', 'pin-again': '123456' })).headers.get('location')).toContain(
      'says=pin-simple',
    );
    expect((await set({ pin: '839201', 'pin-again': '839210' })).headers.get('location')).toContain(
      'says=pin-differs',
    );
    expect((await set({ pin: '839201', 'pin-again': '839201' })).headers.get('location')).toContain(
      'says=enrolled',
    );
    expect((await set({ pin: '839201', 'pin-again': '839201' })).headers.get('location')).toContain(
      '/set-up/enrol',
    );
    expect((await browser.ask(link)).text).toContain('no longer good');
    expect((await ines.ask('/board')).status).toBe(307);
    expect(await browser.signIn('bench', 'ines', '839201')).toBe('/board');
  });
});

test('no secret was written into the server’s words or the database', async () => {
  const secrets = DEMO_SIGN_INS.flatMap(({ password, pin }) => [password, pin]).concat('839201', '100294');
  for (const secret of secrets) expect(doors.shop.said()).not.toContain(secret);
  const tables = await doors.above.query<{ name: string }>(
    `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public'`,
  );
  for (const { name } of tables.rows) {
    const { rows } = await doors.above.query<{ all: string | null }>(
      `SELECT string_agg(t::text, ' ') AS all FROM "${name}" t`,
    );
    for (const secret of secrets) {
      // Six figures may stand in a hash or a time by chance, but never alone.
      const alone = new RegExp(`(?<![0-9a-f.:])${secret}(?![0-9a-f])`);
      expect(alone.test(rows[0]?.all ?? ''), `${secret} in ${name}`).toBe(false);
    }
  }
  expect(doors.shop.said()).not.toMatch(/Error|at .*\.js:/);
});
