/** The device's own database for what is not signed yet: readings of a sitting, and photographs that were taken. */
import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Draft } from './drafts';
import type { PhotoDraft } from './photo-drafts';

export const DRAFTS = 'slipmark-drafts';

interface Schema extends DBSchema {
  drafts: {
    key: string;
    value: Draft<unknown> & { readonly id: string; readonly place: string };
    indexes: { place: string };
  };
  photos: { key: string; value: PhotoDraft };
  /** The bytes stand apart, so that counting the photographs does not read them. */
  copies: { key: string; value: ArrayBuffer };
}

/** Opened when it is first asked for, and anew when it went away. */
export const draftDatabase = (name: string): (() => Promise<IDBPDatabase<Schema>>) => {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  return () =>
    (opened ??= open(name, () => {
      opened = null;
    }));
};

const open = (name: string, onGone: () => void): Promise<IDBPDatabase<Schema>> =>
  openDB<Schema>(name, 2, {
    upgrade: (db, before) => {
      if (before < 1) db.createObjectStore('drafts', { keyPath: 'id' }).createIndex('place', 'place');
      db.createObjectStore('photos', { keyPath: 'key' });
      db.createObjectStore('copies');
    },
    // A newer version in another tab waits for this one to let go; the next call opens it anew.
    blocking: (_, __, event) => {
      if (event.target instanceof IDBDatabase) event.target.close();
      onGone();
    },
    terminated: onGone,
  }).catch((error: unknown) => {
    onGone();
    throw error;
  });

/** Runs what it is given one after another, whatever becomes of each. */
export const oneAfterAnother = (): (<T>(work: () => Promise<T>) => Promise<T>) => {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work, work);
    last = next.catch(() => undefined);
    return next;
  };
};
