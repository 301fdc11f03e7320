/**
 * Every route of the build and who may have it. One that stands here no longer, or not yet, fails the test: whoever
 * adds a page says here whom it is for.
 */
export type Whose =
  /** Anybody, signed in or not. */
  | 'public'
  /** Whoever is signed in. */
  | 'signed-in'
  /** Leads and owners. */
  | 'leads'
  /** Carries nothing of the shop. */
  | 'asset';

export interface RouteRule {
  readonly whose: Whose;
  /** A page, or the methods of a route that is none. */
  readonly is: 'page' | readonly ('GET' | 'POST')[];
  /** An address of it, where it has parts to fill in. */
  readonly at?: string;
}

const page = (whose: Whose, at?: string): RouteRule => ({
  whose,
  is: 'page',
  ...(at === undefined ? {} : { at }),
});
const post = (whose: Whose, at?: string): RouteRule => ({
  whose,
  is: ['POST'],
  ...(at === undefined ? {} : { at }),
});

export const ROUTES: Readonly<Record<string, RouteRule>> = {
  '/': page('public'),
  '/_not-found': page('public', '/no/such/page'),
  '/icon.svg': { whose: 'asset', is: ['GET'] },
  '/sign-in': page('public'),
  '/set-up/enrol': page('public'),
  '/tablet': page('public'),
  '/locked': page('public'),
  '/api/auth/[...nextauth]': post('public', '/api/auth/callback/desk'),
  '/api/enrol': post('public'),
  '/api/sign-out': post('public'),
  '/api/tablet': post('public'),

  '/board': page('signed-in'),
  '/hardware': page('signed-in'),
  '/log': page('signed-in'),
  '/stock': page('signed-in'),
  '/api/stock/[file]': { whose: 'signed-in', is: ['GET'], at: '/api/stock/counts.csv' },
  '/stock/items/[item]': page('signed-in', '/stock/items/NL-M10'),
  '/stock/lots/[lot]': page('signed-in', '/stock/lots/L-0941'),
  '/my-work': page('signed-in'),
  '/verify': page('signed-in'),
  '/cars/[car]': page('signed-in', '/cars/C54-011'),
  '/cars/[car]/log': page('signed-in', '/cars/C54-011/log'),
  '/cars/[car]/joints/[joint]': page('signed-in', '/cars/C54-011/joints/J-110%40L'),
  '/api/commands': post('signed-in'),
  '/api/live': { whose: 'signed-in', is: ['GET'] },
  '/api/lock': post('signed-in'),
  '/api/photos': post('signed-in'),
  '/api/photos/[hash]': { whose: 'signed-in', is: ['GET'], at: `/api/photos/${'0'.repeat(64)}` },
  '/tools': page('signed-in'),
  '/cutting': page('signed-in'),
  '/kits': page('signed-in'),
  '/kits/[car]/[operation]': page('signed-in', '/kits/C54-011/FR-010'),
  '/cars/[car]/donor': page('signed-in', '/cars/C54-015/donor'),
  '/trips': page('signed-in'),
  '/trips/[trip]': page('signed-in', '/trips/1'),

  '/order': page('leads'),
  '/suppliers': page('leads'),
  '/api/suppliers/[file]': { whose: 'leads', is: ['GET'], at: '/api/suppliers/offers.csv' },
  '/set-up': page('leads'),
  '/set-up/shop': page('leads'),
  '/set-up/people': page('leads'),
  '/set-up/tablets': page('leads'),
  '/set-up/tools': page('leads'),
  '/set-up/tools/[tool]': page('leads', '/set-up/tools/T-02'),
  '/set-up/plans': page('leads'),
  '/set-up/cars': page('leads'),
  '/orders': page('leads'),
  '/orders/[order]': page('leads', '/orders/1'),
  '/cars/[car]/cost': page('leads', '/cars/C54-011/cost'),
  '/api/orders/[file]': { whose: 'leads', is: ['GET'], at: '/api/orders/1.csv' },
  '/api/set-up/enrolments': post('leads'),
  '/api/set-up/plans': post('leads'),
  '/api/set-up/rests': post('leads'),
  '/api/set-up/shop': post('leads'),
  '/api/set-up/tablets': post('leads'),
};
