/**
 * Drafts: what was done and typed and is not signed yet, kept on this device, so that no reload, lock or cut takes it
 * away. Each belongs to one person, car, joint, cycle and tool; nobody goes on with another's (D24).
 */
import type { CarId, PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import { DRAFTS, draftDatabase, oneAfterAnother } from './draft-database';

export interface DraftKey {
  readonly person: PersonId;
  readonly car: CarId;
  readonly joint: StateKey;
  readonly cycle: number;
  /** Tool and adapter; empty where a hand tool does it. */
  readonly tool: string;
}

export interface Draft<Body> {
  readonly key: DraftKey;
  readonly body: Body;
  /** The device's own clock: for people, never for a rule. */
  readonly begunAt: string;
  readonly changedAt: string;
}

export interface Drafts<Body> {
  /** All of a joint, of anybody and any cycle, the last changed first. */
  readonly on: (car: CarId, joint: StateKey) => Promise<readonly Draft<Body>[]>;
  /** Answers when the device has it for good. Saves of one draft keep their order. */
  readonly save: (key: DraftKey, body: Body) => Promise<void>;
  readonly discard: (key: DraftKey) => Promise<void>;
}

const idOf = (key: DraftKey): string => JSON.stringify([key.person, key.car, key.joint, key.cycle, key.tool]);
const placeOf = (car: CarId, joint: StateKey): string => JSON.stringify([car, joint]);

/** `isBody` reads what an earlier version may have kept: what it doesn't know is left alone and not shown. */
export const openDrafts = <Body>(isBody: (body: unknown) => body is Body, name = DRAFTS): Drafts<Body> => {
  const database = draftDatabase(name);
  const inOrder = oneAfterAnother();
  return {
    on: (car, joint) =>
      inOrder(async () => {
        const found = await (await database()).getAllFromIndex('drafts', 'place', placeOf(car, joint));
        return found
          .flatMap(({ key, body, begunAt, changedAt }): Draft<Body>[] =>
            isBody(body) ? [{ key, body, begunAt, changedAt }] : [],
          )
          .sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1));
      }),
    save: (key, body) =>
      inOrder(async () => {
        const now = new Date().toISOString();
        // Strict: said to be kept only once the disk has it.
        const change = (await database()).transaction('drafts', 'readwrite', { durability: 'strict' });
        const before = await change.store.get(idOf(key));
        const begunAt = before?.begunAt ?? now;
        await change.store.put({
          id: idOf(key),
          place: placeOf(key.car, key.joint),
          key,
          body,
          begunAt,
          changedAt: now,
        });
        await change.done;
      }),
    discard: (key) => inOrder(async () => (await database()).delete('drafts', idOf(key))),
  };
};
