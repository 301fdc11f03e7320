/** Where a post comes from, what an answer carries, where a sign-in leads: the small guards, one by one. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { cookieKeeping, deviceCookie, formCookie, sessionCookie } from '@/lib/server/auth/cookies';
import { formTokenIn, newFormToken } from '@/lib/server/auth/form-token';
import { ownPath } from '@/lib/server/auth/next-auth';
import { contentPolicy, safeHeaders } from '@/lib/server/auth/safe-headers';
import { isFromHere } from '@/lib/server/auth/same-origin';
import { authSecret, ownOrigin } from '@/lib/server/auth/setting';

const HERE = 'http://127.0.0.1:4200';
beforeEach(() => {
  process.env.NEXTAUTH_URL = HERE;
  process.env.NEXTAUTH_SECRET = 'only for tests';
});
afterEach(() => {
  process.env.NEXTAUTH_URL = HERE;
  process.env.NEXTAUTH_SECRET = 'only for tests';
});

describe('a post', () => {
  test.each<[boolean, string, Readonly<Record<string, string>>]>([
    [true, 'from a page of ours', { origin: HERE, 'sec-fetch-site': 'same-origin' }],
    [true, 'from a browser that says only the origin, as over plain http', { origin: HERE }],
    [true, 'from one that says only the site', { 'sec-fetch-site': 'same-origin' }],
    [false, 'that says nothing', {}],
    [false, 'from elsewhere', { origin: 'http://evil.test', 'sec-fetch-site': 'cross-site' }],
    [
      false,
      'from elsewhere that claims our host',
      { origin: 'http://evil.test', 'x-forwarded-host': 'evil.test', host: 'evil.test' },
    ],
    [false, 'from nowhere', { origin: 'null' }],
    [false, 'from nowhere that forwards nowhere', { origin: 'null', 'x-forwarded-host': 'null' }],
    [
      false,
      'from another port of this machine',
      { origin: 'http://127.0.0.1:4201', 'sec-fetch-site': 'same-site' },
    ],
    [false, 'from another scheme', { origin: 'https://127.0.0.1:4200' }],
    [false, 'typed into the address bar', { 'sec-fetch-site': 'none' }],
    [false, 'with our origin from another site', { origin: HERE, 'sec-fetch-site': 'cross-site' }],
  ])('%s: %s', (may, _, headers) => {
    expect(isFromHere(new Headers(headers))).toBe(may);
  });
});

describe('the way on after signing in', () => {
  test.each([
    ['/board', '/board'],
    ['/cars/C54-011?x=1#joint:J-1', '/cars/C54-011?x=1#joint:J-1'],
    [null, '/board'],
    ['', '/board'],
    ['board', '/board'],
    ['https://evil.test/', '/board'],
    ['//evil.test/', '/board'],
    ['/\\evil.test/', '/board'],
    ['/\t/evil.test/', '/board'],
    ['https:evil', '/board'],
    ['javascript:alert(1)', '/board'],
    ['/api/sign-out', '/board'],
    ['/x/../api/sign-out', '/board'],
  ])('%s leads to %s', (asked, to) => {
    expect(ownPath(asked)).toBe(to);
  });
});

describe('cookies', () => {
  test('over http they have plain names and no mark that http would lose; no script reads them', () => {
    expect([sessionCookie(), formCookie(), deviceCookie()]).toEqual([
      'slipmark.session',
      'slipmark.form',
      'slipmark.device',
    ]);
    expect(cookieKeeping()).toEqual({ httpOnly: true, sameSite: 'lax', path: '/', secure: false });
  });

  test('over https no other host of the domain can set them', () => {
    process.env.NEXTAUTH_URL = 'https://shop.example';
    expect(sessionCookie()).toBe('__Host-slipmark.session');
    expect(cookieKeeping().secure).toBe(true);
  });
});

describe('the form’s token', () => {
  test('is taken back from our own cookie only', () => {
    const { token, cookie } = newFormToken();
    expect(formTokenIn(cookie)).toBe(token);
    for (const other of [
      undefined,
      '',
      '|',
      token,
      `${token}|${token}`,
      cookie.replace(/.$/, (last) => (last === '0' ? '1' : '0')),
      `${cookie}|x`.replace(/^./, ''),
    ])
      expect(formTokenIn(other)).toBeNull();
    process.env.NEXTAUTH_SECRET = 'another';
    expect(formTokenIn(cookie)).toBeNull();
  });
});

describe('headers', () => {
  test('the policy lets in what carries the nonce, and nothing that was written into a page', () => {
    const policy = contentPolicy('abc', false);
    expect(policy).toContain("script-src 'self' 'nonce-abc' 'strict-dynamic';");
    expect(policy).toContain("style-src-attr 'none'");
    for (const wall of [
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
    ])
      expect(policy).toContain(wall);
    expect(policy).not.toMatch(/unsafe|\*|http/);
  });

  test('https is asked for where there is https', () => {
    expect(safeHeaders()['strict-transport-security']).toBeUndefined();
    process.env.NEXTAUTH_URL = 'https://shop.example/';
    expect(ownOrigin()).toBe('https://shop.example');
    expect(safeHeaders()['strict-transport-security']).toMatch(/max-age=31536000/);
    expect(contentPolicy('abc', false)).toContain('upgrade-insecure-requests');
  });
});

test('without an address or a secret nothing works, rather than with one made up', () => {
  delete process.env.NEXTAUTH_SECRET;
  expect(authSecret).toThrow('NEXTAUTH_SECRET');
  delete process.env.NEXTAUTH_URL;
  expect(ownOrigin).toThrow('NEXTAUTH_URL');
  expect(() => isFromHere(new Headers({ origin: 'undefined' }))).toThrow('NEXTAUTH_URL');
});
