/** Takes the form of the page behind a link: one's own password and PIN, set once. Answers with where to go. */
import { enrol } from '@/lib/server/auth/enrolment';
import { limitedBody } from '@/lib/server/auth/limited-body';
import { TooBusy } from '@/lib/server/auth/secret-hash';
import { ownOrigin } from '@/lib/server/auth/setting';
import { database } from '@/lib/server/database';

export const dynamic = 'force-dynamic';

const MOST_BYTES = 16_384;

export const POST = async (request: Request): Promise<Response> => {
  const body = await limitedBody(request, MOST_BYTES);
  if (body === null) return new Response('This is no form of ours.', { status: 413 });
  const fields = new URLSearchParams(body);
  const token = fields.get('token') ?? '';
  const differing = ['password', 'pin'].filter((name) => fields.get(name) !== fields.get(`${name}-again`));
  if (differing.length > 0)
    return backTo(
      token,
      differing.map((name) => `${name}-differs`),
    );
  try {
    const done = await enrol(database(), token, {
      password: fields.get('password') ?? undefined,
      pin: fields.get('pin') ?? undefined,
    });
    if (done.outcome === 'faults') return backTo(token, done.faults);
    if (done.outcome === 'no-link') return backTo(token, []);
    const query = new URLSearchParams({ at: done.at, name: done.person, says: 'enrolled' });
    // Whoever begins a shop is led on from here.
    if (done.at === 'desk' && (await database().car.count()) === 0) query.set('to', '/set-up');
    return to(`/sign-in?${query.toString()}`);
  } catch (error) {
    if (error instanceof TooBusy) return backTo(token, ['busy']);
    throw error;
  }
};

const backTo = (token: string, says: readonly string[]): Response =>
  to(`/set-up/enrol?${new URLSearchParams({ token, says: says.join(',') }).toString()}`);

const to = (path: string): Response =>
  new Response(null, { status: 303, headers: { location: `${ownOrigin()}${path}` } });
