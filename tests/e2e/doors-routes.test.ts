/** Each route of the build: whom it lets in, what its answers carry, and that none was made beforehand. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { PAGES, ROOT } from '@/tests/support/browser-global';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { Client } from './doors-client';
import type { Answer } from './doors-client';
import { ROUTES } from './doors-routes';
import type { RouteRule } from './doors-routes';

let shop: OpenedShop;
let technician: Client;
let lead: Client;
beforeAll(async () => {
  shop = await openShop();
  technician = new Client(shop.address);
  lead = new Client(shop.address);
  await technician.signIn('bench', 'tobit', secretsOf('tobit').pin);
  await lead.signIn('desk', 'mara', secretsOf('mara').password);
});
afterAll(() => shop.close());

const secretsOf = (person: string): { readonly password: string; readonly pin: string } => {
  const found = DEMO_SIGN_INS.find((each) => each.person === person);
  if (found === undefined) throw new Error(`nobody called ${person}`);
  return found;
};

const manifest = (name: string): unknown => JSON.parse(readFileSync(join(ROOT, PAGES, name), 'utf8'));

/** `/set-up/people/page` is the file; `/set-up/people` the address. */
const builtRoutes = (): readonly string[] =>
  Object.values(manifest('app-path-routes-manifest.json') as Readonly<Record<string, string>>).filter(
    // Next's own last resort, which no address leads to.
    (route) => route !== '/_global-error',
  );

const all = Object.entries(ROUTES);
const those = (wanted: (rule: RouteRule) => boolean): readonly (readonly [string, RouteRule])[] =>
  all.filter(([, rule]) => wanted(rule));
const addressOf = (route: string, { at }: RouteRule): string => at ?? route;

const askAs = async (client: Client, route: string, rule: RouteRule): Promise<Answer> => {
  const address = addressOf(route, rule);
  return rule.is === 'page' || rule.is.includes('GET')
    ? client.ask(address)
    : client.post(address, '{}', 'application/json');
};

test('every route of the build is classified, and nothing else is', () => {
  expect([...builtRoutes()].sort()).toEqual(Object.keys(ROUTES).sort());
});

test('no page was made beforehand: it would have no nonce, and show one person’s shop to another', () => {
  const { routes, dynamicRoutes } = manifest('prerender-manifest.json') as {
    readonly routes: object;
    readonly dynamicRoutes: object;
  };
  expect(Object.keys(routes).filter((route) => !['/icon.svg', '/_global-error'].includes(route))).toEqual([]);
  expect(Object.keys(dynamicRoutes)).toEqual([]);
});

test('nothing of the development server is in it, and no source', async () => {
  const nobody = new Client(shop.address);
  for (const path of [
    '/__nextjs_original-stack-frames',
    '/_next/mcp',
    '/.env',
    '/.git/config',
    '/package.json',
    '/prisma/schema/people.prisma',
    '/_next/static/chunks/main.js.map',
  ])
    expect((await nobody.ask(path)).status, path).toBe(404);
});

describe('nobody', () => {
  test.each(those(({ whose, is }) => is === 'page' && (whose === 'signed-in' || whose === 'leads')))(
    '%s sends to the sign-in page, and shows nothing',
    async (route, rule) => {
      const address = addressOf(route, rule);
      const kinds: readonly Readonly<Record<string, string>>[] = [
        {},
        { rsc: '1' },
        { rsc: '1', 'next-router-prefetch': '1' },
        { rsc: '1', 'next-router-prefetch': '1', 'next-router-segment-prefetch': '/_tree' },
      ];
      for (const headers of kinds) {
        const answer = await new Client(shop.address).ask(address, { headers });
        expect(answer.text, JSON.stringify(headers)).not.toMatch(
          /Mara Mill|Tobit Fenn|C54-0\d\d[^"]*oxblood|Quernmill/,
        );
        if (Object.keys(headers).length === 0) {
          expect(answer.status).toBe(307);
          expect(answer.headers.get('location')).toBe(`/sign-in?to=${encodeURIComponent(address)}`);
        }
      }
    },
  );

  test.each(those(({ whose, is }) => is !== 'page' && (whose === 'signed-in' || whose === 'leads')))(
    '%s answers 401',
    async (route, rule) => {
      const answer = await askAs(new Client(shop.address), route, rule);
      expect(answer.status).toBe(401);
      expect(JSON.parse(answer.text)).toMatchObject({ outcome: 'not-signed-in' });
    },
  );

  test.each(those(({ whose }) => whose === 'public' || whose === 'asset'))(
    '%s answers',
    async (route, rule) => {
      const answer = await askAs(new Client(shop.address), route, rule);
      expect(answer.status, answer.text).toBeLessThan(500);
      expect(answer.status).not.toBe(401);
    },
  );

  test.each([
    '//board',
    '/board/',
    '/%62oard',
    '/board%2f',
    '/BOARD',
    '/_next/../board',
    '/board.rsc',
    '/board.segments/_tree.segment.rsc',
    '/board?nxtPcar=1',
  ])('finds no way round: %s', async (path) => {
    const answer = await new Client(shop.address).ask(path);
    expect(answer.status).not.toBe(200);
    expect(answer.text).not.toMatch(/Mara Mill|Tobit Fenn/);
  });

  test('does not pass by saying that the proxy was asked already', async () => {
    for (const name of ['proxy', 'middleware', 'src/middleware'])
      for (const path of ['/board', '/set-up/people']) {
        const answer = await new Client(shop.address).ask(path, {
          headers: { 'x-middleware-subrequest': Array.from({ length: 5 }, () => name).join(':') },
        });
        expect(answer.status).toBe(307);
      }
  });
});

describe('a technician', () => {
  test.each(those(({ whose, is }) => is === 'page' && whose === 'signed-in'))(
    '%s opens',
    async (route, rule) => {
      expect((await askAs(technician, route, rule)).status).not.toBe(307);
    },
  );

  test.each(those(({ whose, is }) => is === 'page' && whose === 'leads'))(
    '%s says whom it is for, and shows nothing',
    async (route, rule) => {
      const answer = await askAs(technician, route, rule);
      expect(answer.text).toContain('This is for a lead or an owner');
      expect(answer.text).not.toMatch(/Ines Harrow|Ada Quern|id="add-/);
      const flight = await technician.ask(addressOf(route, rule), { headers: { rsc: '1' } });
      expect(flight.text).not.toMatch(/Ines Harrow|Ada Quern/);
    },
  );

  test.each(those(({ whose, is }) => is !== 'page' && whose === 'leads'))(
    '%s answers 403',
    async (route, rule) => {
      const answer = await askAs(technician, route, rule);
      expect(answer.status).toBe(403);
      expect(JSON.parse(answer.text)).toMatchObject({ outcome: 'not-allowed' });
    },
  );
});

describe('a lead', () => {
  test.each(those(({ whose, is }) => is === 'page' && whose === 'leads'))('%s opens', async (route, rule) => {
    const answer = await askAs(lead, route, rule);
    expect(answer.status).toBe(200);
    expect(answer.text).not.toContain('This is for a lead or an owner');
  });

  test.each(those(({ whose, is }) => is !== 'page' && is.includes('GET') && whose === 'leads'))(
    '%s is given',
    async (route, rule) => {
      expect((await askAs(lead, route, rule)).status).toBe(200);
    },
  );

  test.each(those(({ whose, is }) => is !== 'page' && is.includes('POST') && whose === 'leads'))(
    '%s asks for input',
    async (route, rule) => {
      expect((await askAs(lead, route, rule)).status).toBe(400);
    },
  );
});

describe('every class of answer', () => {
  const carries = (answer: Answer, path: string): void => {
    expect(answer.headers.get('x-content-type-options'), path).toBe('nosniff');
    expect(answer.headers.get('referrer-policy'), path).toBe('same-origin');
    expect(answer.headers.get('x-frame-options'), path).toBe('DENY');
    expect(answer.headers.get('permissions-policy'), path).toContain('microphone=()');
    expect(answer.headers.get('cross-origin-opener-policy'), path).toBe('same-origin');
    expect(answer.headers.get('x-powered-by'), path).toBeNull();
    expect(answer.headers.get('access-control-allow-origin'), path).toBeNull();
  };

  const policyOf = (answer: Answer): string => answer.headers.get('content-security-policy') ?? '';

  test('carries the headers: page, redirect, refusal, missing page, wrong method, file', async () => {
    const nobody = new Client(shop.address);
    const style = /href="(\/_next\/static\/[^"]+\.css)"/.exec((await nobody.ask('/sign-in')).text)?.[1] ?? '';
    const paths = ['/sign-in', '/board', '/no/such/page', '/api/none', '/api/commands', '/icon.svg', style];
    for (const path of paths) carries(await nobody.ask(path), path);
    carries(await lead.ask('/set-up'), 'a page');
    carries(await lead.post('/api/commands', '{}', 'application/json'), 'an answer');
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])
      for (const origin of [shop.address, 'http://evil.test']) {
        const answer = await nobody.ask('/api/commands', { method, headers: { origin } });
        carries(answer, `${method} from ${origin}`);
        expect(answer.status).toBeGreaterThanOrEqual(
          origin === shop.address && method === 'OPTIONS' ? 200 : 400,
        );
      }
  });

  test('a page’s scripts all carry the nonce of its policy, another each time, and no style stands in a tag', async () => {
    const nonces = new Set<string>();
    for (const [client, path] of [
      [new Client(shop.address), '/sign-in'],
      [lead, '/board'],
      [lead, '/set-up/people'],
      [lead, '/no/such/page'],
    ] as const) {
      const answer = await client.ask(path);
      const nonce = /'nonce-([^']+)'/.exec(policyOf(answer))?.[1] ?? '';
      expect(nonce).toMatch(/^[A-Za-z0-9+/]{22}==$/);
      nonces.add(nonce);
      const scripts = answer.text.match(/<script\b[^>]*>/g) ?? [];
      expect(scripts.length).toBeGreaterThan(2);
      for (const script of scripts) expect(script).toContain(`nonce="${nonce}"`);
      for (const tag of answer.text.match(/<style\b[^>]*>/g) ?? []) expect(tag).toContain(`nonce="${nonce}"`);
      expect(answer.text.replace(/<script\b[\s\S]*?<\/script>/g, '')).not.toMatch(/<[^>]+\sstyle="/);
    }
    expect(nonces.size).toBe(4);
  });

  test('nothing but the build’s own files may be kept by a browser', async () => {
    for (const [client, path] of [
      [new Client(shop.address), '/sign-in'],
      [new Client(shop.address), '/no/such/page'],
      [lead, '/board'],
      [lead, '/set-up/people'],
    ] as const)
      expect((await client.ask(path)).headers.get('cache-control'), path).toContain('no-store');
  });

  test('no picture is fetched on anybody’s word', async () => {
    const answer = await lead.ask('/_next/image?url=http%3A%2F%2F127.0.0.1%2F&w=64&q=75');
    expect(answer.status).toBe(404);
  });

  test('another name of this machine leads to the right one', async () => {
    const { port } = new URL(shop.address);
    const answer = await new Client(shop.address.replace('127.0.0.1', 'localhost')).ask('/board?x=1');
    expect(answer.status).toBe(421);
    expect(answer.text).toContain(`url=http://127.0.0.1:${port}/board?x=1"`);
  });
});

test('the proxy is where Next looks for it', () => {
  expect(existsSync(join(ROOT, 'proxy.ts'))).toBe(true);
  expect(JSON.stringify(manifest('server/functions-config-manifest.json'))).toContain('_middleware');
});
