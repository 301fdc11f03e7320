/** How next-auth is used: two doors with credentials, a sealed cookie that carries nothing but the session's token. */
import 'server-only';
import type { NextAuthOptions, User } from 'next-auth';
import credentials from 'next-auth/providers/credentials';
import { database } from '@/lib/server/database';
import { SESSION_SECONDS, backCookie, cookieKeeping, formCookie, sessionCookie } from './cookies';
import { authSecret, ownOrigin } from './setting';
import { signIn } from './sign-in';
import type { Door } from './sign-in';

declare module 'next-auth' {
  interface User {
    readonly session: string;
  }
}

declare module 'next-auth/jwt' {
  interface JWT {
    readonly session?: string;
  }
}

const HOME = '/board';

/** A way inside this shop; whatever leads out of it is the board. */
export const ownPath = (path: string | null | undefined): string => {
  if (path === null || path === undefined || !path.startsWith('/')) return HOME;
  const origin = ownOrigin();
  if (!URL.canParse(path, origin)) return HOME;
  const url = new URL(path, origin);
  return url.origin === origin && !url.pathname.startsWith('/api/')
    ? `${url.pathname}${url.search}${url.hash}`
    : HOME;
};

const door = (id: Door, deviceToken: string | null) =>
  credentials<Record<'name' | 'secret', object>>({
    id,
    credentials: { name: {}, secret: {} },
    authorize: async (given): Promise<User> => {
      const signed = await signIn(database(), {
        door: id,
        name: given?.name ?? '',
        secret: given?.secret ?? '',
        deviceToken,
      });
      if (signed.outcome === 'in') return { id: signed.person, session: signed.session };
      // The only way in which next-auth lets a reason through. The page reads the rest from the database.
      throw new Error(signed.outcome);
    },
  });

export const authOptions = (deviceToken: string | null): NextAuthOptions => ({
  secret: authSecret(),
  providers: [door('desk', deviceToken), door('bench', deviceToken)],
  session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
  pages: { signIn: '/sign-in', error: '/sign-in' },
  cookies: {
    sessionToken: { name: sessionCookie(), options: cookieKeeping() },
    csrfToken: { name: formCookie(), options: cookieKeeping() },
    callbackUrl: { name: backCookie(), options: cookieKeeping() },
  },
  callbacks: {
    jwt: ({ token, user }) => ({ session: (user as User | undefined)?.session ?? token.session }),
    redirect: ({ url }) => `${ownOrigin()}${ownPath(pathOf(url))}`,
  },
  logger: {
    error: (code) => console.error(JSON.stringify({ at: 'next-auth', code })),
    warn: () => undefined,
    debug: () => undefined,
  },
});

const pathOf = (url: string): string | null => {
  const origin = ownOrigin();
  return url.startsWith(`${origin}/`) ? url.slice(origin.length) : url;
};
