/** What happens in the shop, told to an open screen as long as it is open: server-sent events. */
import { seat } from '@/lib/server/auth/session';
import { liveHub } from '@/lib/server/live/hub';

export const dynamic = 'force-dynamic';

/** `no-transform` also keeps Next from packing it, and `x-accel-buffering` a proxy from gathering it. */
const HEADERS = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-cache, no-store, no-transform, private',
  'x-accel-buffering': 'no',
  // When the line ends, so does its connection: kept for later, it would hold up a server that is being stopped.
  connection: 'close',
};

export const GET = async (): Promise<Response> => {
  try {
    const who = await seat();
    if (who === null)
      return Response.json(
        { outcome: 'not-signed-in', says: 'Nobody is signed in here. Sign in and look again.' },
        { status: 401 },
      );
    const stream = await liveHub().watch(who.session);
    return stream === null ? busy() : new Response(stream, { headers: HEADERS });
  } catch (error) {
    console.error(
      JSON.stringify({ at: 'live', trouble: error instanceof Error ? error.message : 'unknown' }),
    );
    return busy();
  }
};

const busy = (): Response =>
  Response.json(
    { outcome: 'busy', says: 'Nothing can be told just now. What you see may be old; it is asked again.' },
    { status: 503, headers: { 'retry-after': '2', connection: 'close' } },
  );
