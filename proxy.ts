/**
 * Before every request: posts from elsewhere are turned away, and each answer gets its headers and its nonce. It lets
 * nobody in: every page and route asks for itself who is there (lib/server/auth/session.ts).
 */
import { randomBytes } from 'node:crypto';
import { NextResponse } from 'next/server';
import type { NextRequest } from 'next/server';
import { DEVICE_SECONDS, cookieKeeping, deviceCookie, formCookie } from '@/lib/server/auth/cookies';
import { formTokenIn, newFormToken } from '@/lib/server/auth/form-token';
import { FORM_HEADER, PATH_HEADER } from '@/lib/server/auth/passed-headers';
import { contentPolicy, safeHeaders } from '@/lib/server/auth/safe-headers';
import { isFromHere, isReading } from '@/lib/server/auth/same-origin';
import { ownOrigin } from '@/lib/server/auth/setting';
import { newToken } from '@/lib/server/auth/tokens';

export const proxy = (request: NextRequest): NextResponse => {
  const { pathname } = request.nextUrl;
  if (!isReading(request.method) && !isFromHere(request.headers))
    return kept(fromElsewhere(pathname), pathname);
  // Nothing here asks the server to make pictures smaller, so that nobody can make it fetch any.
  if (pathname.startsWith('/_next/image')) return kept(new NextResponse(null, { status: 404 }), pathname);
  const moved = otherNameOfThisMachine(request);
  if (moved !== null) return kept(openThere(moved), pathname);
  return pathname.startsWith('/_next/') ? kept(NextResponse.next(), pathname) : page(request);
};

const page = (request: NextRequest): NextResponse => {
  const { pathname, search } = request.nextUrl;
  const policy = contentPolicy(randomBytes(16).toString('base64'), process.env.NODE_ENV === 'development');
  const headers = new Headers(request.headers);
  // Next reads the nonce out of it.
  headers.set('content-security-policy', policy);
  headers.set(PATH_HEADER, `${pathname}${search}`);
  headers.delete(FORM_HEADER);
  const cookies = signsIn(pathname) ? signInCookies(request, headers) : [];
  const response = kept(NextResponse.next({ request: { headers } }), pathname);
  response.headers.set('content-security-policy', policy);
  for (const { name, value, seconds } of cookies)
    response.cookies.set(name, value, {
      ...cookieKeeping(),
      ...(seconds === null ? {} : { maxAge: seconds }),
    });
  return response;
};

/** The pages from which one signs in: they hold a form, and the device gets its name there. */
const SIGN_IN_PAGES: ReadonlySet<string> = new Set(['/sign-in', '/set-up/enrol', '/tablet']);
const signsIn = (pathname: string): boolean => SIGN_IN_PAGES.has(pathname);

interface NewCookie {
  readonly name: string;
  readonly value: string;
  readonly seconds: number | null;
}

/** A page can't set cookies itself. What it needs of them is passed on to it in a header. */
const signInCookies = (request: NextRequest, headers: Headers): readonly NewCookie[] => {
  const cookies: NewCookie[] = [];
  const before = formTokenIn(request.cookies.get(formCookie())?.value);
  const form = before === null ? newFormToken() : null;
  headers.set(FORM_HEADER, before ?? form?.token ?? '');
  if (form !== null) cookies.push({ name: formCookie(), value: form.cookie, seconds: null });
  // Renewed at each visit: a browser forgets it after so long without one.
  const device = request.cookies.get(deviceCookie())?.value;
  cookies.push({ name: deviceCookie(), value: device ?? newToken(), seconds: DEVICE_SECONDS });
  return cookies;
};

const kept = (response: NextResponse, pathname: string): NextResponse => {
  for (const [name, value] of Object.entries(safeHeaders())) response.headers.set(name, value);
  // A photograph never changes under its name; that route says itself for how long it may be kept.
  if (pathname.startsWith('/api/photos/')) return response;
  // Whatever stands here wins over what a route says itself; the live line must not be packed on its way.
  const keeping = pathname === '/api/live' ? 'private, no-store, no-transform' : 'private, no-store';
  if (!pathname.startsWith('/_next/static/')) response.headers.set('cache-control', keeping);
  return response;
};

const ELSEWHERE = (origin: string): string =>
  `This did not come from a page of this shop. Open it at ${origin} and do it there.`;

const fromElsewhere = (pathname: string): NextResponse => {
  const says = ELSEWHERE(ownOrigin());
  return pathname.startsWith('/api/')
    ? NextResponse.json({ outcome: 'not-allowed', says }, { status: 403 })
    : new NextResponse(says, { status: 403, headers: { 'content-type': 'text/plain; charset=utf-8' } });
};

/** Next would cut a redirect down to its path, for it takes both names to be its own: so a page leads over. */
const openThere = ({ href }: URL): NextResponse => {
  const there = href.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
  return new NextResponse(
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Slipmark</title><meta http-equiv="refresh" content="0;url=${there}"><p>This shop is opened at <a href="${there}">${there}</a>.</p></html>`,
    { status: 421, headers: { 'content-type': 'text/html; charset=utf-8' } },
  );
};

const LOOPBACK: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

/** `localhost` and `127.0.0.1` are one machine, but cookies and posts go by the name: the page moves to the right one. */
const otherNameOfThisMachine = (request: NextRequest): URL | null => {
  const own = new URL(ownOrigin());
  const host = request.headers.get('host');
  if (!isReading(request.method) || host === null || host === own.host || !LOOPBACK.has(own.hostname))
    return null;
  const asked = `${own.protocol}//${host}`;
  if (!URL.canParse(asked)) return null;
  const { hostname, port } = new URL(asked);
  if (!LOOPBACK.has(hostname) || port !== own.port) return null;
  return new URL(`${request.nextUrl.pathname}${request.nextUrl.search}`, own);
};
