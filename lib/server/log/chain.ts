/** What makes the log tell of itself: canonical bytes, each hashed together with its predecessor's hash. */
import { createHash } from 'node:crypto';
import type { Event } from '@/lib/domain/events';
import { storedJson } from '@/lib/wire/canonical-json';

/** One entry of a stream, as it is kept. */
export interface Entry {
  readonly stream: string;
  readonly version: number;
  readonly type: string;
  readonly command: string;
  readonly at: string;
  readonly body: string;
  readonly previous: string;
  readonly hash: string;
}

/** SHA-256(0x01 ‖ hash of the predecessor ‖ body), in hexadecimal; 0x01 as RFC 9162 marks what joins two hashes. */
export const chained = (previous: string, body: string): string =>
  createHash('sha256')
    .update(Buffer.from([1]))
    .update(Buffer.from(previous, 'hex'))
    .update(body, 'utf8')
    .digest('hex');

/** The canonical text of an event in its place. Fields that are undefined are none: the store can't keep them. */
export const bodyOf = (stream: string, version: number, event: Event): string =>
  storedJson({ stream, version, event });

/** The entries that these events become after the head of their stream. All belong to one stream. */
export const entriesOf = (
  stream: string,
  head: { readonly version: number; readonly hash: string },
  events: readonly Event[],
): readonly Entry[] => {
  let { version, hash: previous } = head;
  return events.map((event) => {
    version += 1;
    const body = bodyOf(stream, version, event);
    const hash = chained(previous, body);
    const { command, at } = event.meta;
    const entry = { stream, version, type: event.type, command, at, body, previous, hash };
    previous = hash;
    return entry;
  });
};
