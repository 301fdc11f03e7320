/** The store of photographs on a real Postgres: what is kept of one, what is turned away, and what names it. */
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verifyLog } from '@/lib/server/log/verify';
import { cleanJpeg } from '@/lib/server/photos/clean-jpeg';
import { keepPhoto, photoCopy } from '@/lib/server/photos/keep';
import { MOST_AN_HOUR } from '@/lib/wire/photos';
import { drawnJpeg, sentOf, sha256, withSegment } from '@/tests/support/photos';
import { StoredShop } from '@/tests/support/stored-shop';

const TOM = { person: 'tom', device: null };
const GPS = 'Exif\0\0N 52 12.3 E 0 7.1, a telephone';

let shop: StoredShop;
let owner: pg.Client;
let root: pg.Client;

beforeAll(async () => {
  shop = await StoredShop.open();
  await shop.startCar('C1');
  await shop.startCar('C2');
  [owner, root] = [shop.at.ownerUrl, shop.at.superUrl].map(
    (connectionString) => new pg.Client({ connectionString }),
  ) as [pg.Client, pg.Client];
  await owner.connect();
  await root.connect();
});
afterAll(async () => {
  await owner.end();
  await root.end();
  await shop.close();
});

const keep = (copy: Uint8Array, more: Parameters<typeof sentOf>[1] = {}) =>
  keepPhoto(shop.db, sentOf(copy, more), copy, TOM);

/** The code that Postgres says no with, `00000` where it went through; nothing of it stays. */
const stateOf = async (client: pg.Client, sql: string): Promise<string> => {
  await client.query('BEGIN');
  try {
    await client.query(sql);
    return '00000';
  } catch (error) {
    return (error as pg.DatabaseError).code ?? String(error);
  } finally {
    await client.query('ROLLBACK');
  }
};

describe('what is kept', () => {
  test('is the picture, without place, camera, comment or what follows its end', async () => {
    const plain = drawnJpeg(640, 480);
    const laden = Buffer.concat([
      withSegment(withSegment(plain, 0xe1, GPS), 0xfe, 'a comment'),
      Buffer.from('and a passenger'),
    ]);
    const answer = await keep(laden);
    expect(answer).toEqual({ outcome: 'kept', hash: sentOf(laden).sha256, already: false });
    const copy = await photoCopy(shop.db, sentOf(laden).sha256);
    expect(Buffer.from(copy ?? []).equals(Buffer.from(plain))).toBe(true);
    const row = await shop.db.photo.findUniqueOrThrow({ where: { sha256: sentOf(laden).sha256 } });
    expect(row).toMatchObject({ car: 'C1', bytes: 3_400_000, type: 'image/jpeg', width: 640, height: 480 });
    expect(row.copySha256).toBe(sha256(plain));
    expect(row.takenBy).toBe('tom');
  });

  test('is kept once, however often and by how many at once it is sent', async () => {
    const copy = drawnJpeg(24, 16);
    const answers = await Promise.all([keep(copy), keep(copy), keep(copy), keep(copy)]);
    expect(answers.map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'kept', 'kept']);
    expect(answers.filter((answer) => 'already' in answer && !answer.already)).toHaveLength(1);
    expect(await shop.db.photo.count({ where: { sha256: sentOf(copy).sha256 } })).toBe(1);
  });

  test('is of one car: the same one of another is turned away', async () => {
    const copy = drawnJpeg(32, 16);
    await keep(copy);
    expect(await keep(copy, { car: 'C2' })).toMatchObject({
      outcome: 'refused',
      says: 'This very photograph is kept already, of C1. Take one of this car.',
    });
  });
});

describe('what is turned away, and leaves nothing', () => {
  const good = drawnJpeg(40, 40);
  const twoFrames = Buffer.concat([good.subarray(0, good.length - 2), good.subarray(2)]);
  test.each<readonly [string, Uint8Array, RegExp]>([
    ['a PNG under a JPEG’s name', Buffer.from('89504e470d0a1a0a0000', 'hex'), /this is none/],
    ['nothing', new Uint8Array(), /this is none/],
    ['a page', Buffer.from('<svg onload="alert(1)">'), /this is none/],
    ['one cut off in its picture', good.subarray(0, good.length - 6), /broken or cut off/],
    ['one cut off in its tables', good.subarray(0, 40), /broken or cut off/],
    ['one with two pictures in it', twoFrames, /broken or cut off/],
    [
      'a segment that claims more than there is',
      withSegment(good, 0xe1, '').fill(0xff, 4, 6),
      /broken or cut/,
    ],
    ['one too wide', drawnJpeg(1601, 8), /1601 × 8 pixels/],
    ['one too high', drawnJpeg(8, 1601), /8 × 1601 pixels/],
    ['one without height', drawnJpeg(8, 0), /8 × 0 pixels/],
  ])('%s', async (_name, copy, says) => {
    const before = await shop.db.photo.count();
    const answer = await keep(copy);
    expect(answer.outcome).toBe('bad-input');
    expect('says' in answer && answer.says).toMatch(says);
    expect(await shop.db.photo.count()).toBe(before);
  });

  test('one whose bytes changed on the way', async () => {
    const answer = await keepPhoto(shop.db, { ...sentOf(good), copy: sha256(drawnJpeg(8, 8)) }, good, TOM);
    expect(answer).toMatchObject({ outcome: 'bad-input', says: /did not arrive as it was sent/ });
  });

  test('one of no car', async () => {
    expect(await keep(good, { car: 'C9' })).toMatchObject({ outcome: 'not-found' });
  });

  test('the one after so many within an hour, of that person alone', async () => {
    await root.query(`INSERT INTO photo (sha256, car, bytes, type, copy, width, height, taken_by)
      SELECT encode(sha256(n::text::bytea), 'hex'), 'C1', 1, 'image/jpeg',
        '\\xffd8ff'::bytea || decode(repeat('00', 70), 'hex') || '\\xffd9'::bytea, 8, 8, 'tess'
      FROM generate_series(1, ${String(MOST_AN_HOUR)}) AS n`);
    const copy = drawnJpeg(48, 8);
    const tess = { person: 'tess', device: null };
    expect(await keepPhoto(shop.db, sentOf(copy), copy, tess)).toMatchObject({ outcome: 'too-many' });
    expect(await keep(copy)).toMatchObject({ outcome: 'kept' });
  });

  test('and every byte that may be missing at the end is noticed', () => {
    for (let length = 0; length < good.length; length += 1)
      expect(cleanJpeg(good.subarray(0, length)).ok, String(length)).toBe(false);
    expect(cleanJpeg(good).ok).toBe(true);
  });
});

describe('the net under it', () => {
  const insert = (columns: Readonly<Record<string, string>>): string => {
    const all = {
      sha256: `repeat('e', 64)`,
      car: `'C1'`,
      bytes: '9',
      type: `'image/jpeg'`,
      copy: `'\\xffd8ff'::bytea || decode(repeat('00', 70), 'hex') || '\\xffd9'::bytea`,
      width: '8',
      height: '8',
      taken_by: `'tom'`,
      ...columns,
    };
    return `INSERT INTO photo (${Object.keys(all).join(', ')}) VALUES (${Object.values(all).join(', ')})`;
  };

  test.each<readonly [string, string, string]>([
    ['a whole one goes in', insert({}), '00000'],
    ['of no car', insert({ car: `'C9'` }), '23503'],
    ['of nobody', insert({ taken_by: `'xy'` }), '23503'],
    ['under another name than a hash', insert({ sha256: `'f00d'` }), '23514'],
    ['of another type', insert({ type: `'image/svg+xml'` }), '23514'],
    ['too long an original', insert({ bytes: '40000001' }), '23514'],
    ['too wide', insert({ width: '1601' }), '23514'],
    ['a copy that is no JPEG', insert({ copy: `decode(repeat('00', 80), 'hex')` }), '23514'],
    [
      'too long a copy',
      insert({ copy: `'\\xffd8ff'::bytea || decode(repeat('00', 1500000), 'hex') || '\\xffd9'::bytea` }),
      '23514',
    ],
    ['a hash of its own', insert({ copy_sha256: `repeat('0', 64)` }), '428C9'],
  ])('%s', async (_name, sql, state) => {
    expect(await stateOf(owner, sql)).toBe(state);
  });

  test.each([
    ['changed', `UPDATE photo SET car = 'C2'`],
    ['taken out', 'DELETE FROM photo'],
    ['emptied', 'TRUNCATE photo'],
  ])('nobody has one %s', async (_name, sql) => {
    expect(await stateOf(owner, sql)).toBe('42501');
  });
});

describe('a command that names one', () => {
  const finding = (photos: readonly string[]) =>
    ({
      type: 'report-finding',
      car: 'C1',
      about: { kind: 'joint', key: 'J-1' },
      text: 'paint under the washer',
      photos,
    }) as const;

  test('keeps it with what it says, the kept copy too; a swapped one is found out', async () => {
    const copy = drawnJpeg(56, 40);
    const { sha256: hash } = sentOf(copy);
    expect(await shop.give('tom', finding([hash]))).toMatchObject({ outcome: 'refused' });
    await keep(copy);
    await shop.must('tom', finding([hash]));
    const [row] = await shop.db.carPhoto.findMany({ where: { carId: 'C1' } });
    expect(row?.row).toMatchObject({ of: 'F-1', slot: 'as found', hash, by: 'tom' });
    const event = await shop.db.event.findFirstOrThrow({ where: { type: 'photo-added' } });
    expect(JSON.parse(event.body)).toMatchObject({ event: { hash, copy: sha256(copy) } });
    expect((await verifyLog(shop.db)).faults).toEqual([]);

    await root.query('ALTER TABLE photo DISABLE TRIGGER USER');
    await root.query('UPDATE photo SET copy = $1 WHERE sha256 = $2', [Buffer.from(drawnJpeg(56, 48)), hash]);
    expect((await verifyLog(shop.db)).faults).toMatchObject([
      {
        stream: 'car:C1',
        says: `the photograph ${hash.slice(0, 12)} is another picture than the one that was named`,
      },
    ]);
    await root.query('DELETE FROM photo WHERE sha256 = $1', [hash]);
    expect((await verifyLog(shop.db)).faults).toMatchObject([{ says: /is gone/ }]);
    await root.query('ALTER TABLE photo ENABLE TRIGGER USER');
  });

  test('of another car is refused, and nothing of it is written', async () => {
    const copy = drawnJpeg(64, 40);
    await keep(copy, { car: 'C2' });
    const before = await shop.db.carFinding.count();
    expect(await shop.give('tom', finding([sentOf(copy).sha256]))).toMatchObject({
      outcome: 'refused',
      refusals: [{ code: 'unknown-thing' }],
    });
    expect(await shop.db.carFinding.count()).toBe(before);
  });
});
