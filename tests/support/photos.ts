/** Photographs that are made, not taken: small, real, and as different as their sizes. */
import { createHash } from 'node:crypto';
import type { Database } from '@/lib/server/database';
import { keepPhoto } from '@/lib/server/photos/keep';
import type { PhotoAnswer, PhotoSent } from '@/lib/wire/photos';

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A baseline JPEG, all one grey (ITU-T T.81): in each block no difference, then the end of the block. */
export const drawnJpeg = (width: number, height: number): Uint8Array => {
  const blocks = Math.ceil(width / 8) * Math.ceil(height / 8);
  const scan = new Uint8Array(Math.ceil(blocks / 4));
  // What is left of the last byte is filled with ones.
  if (blocks % 4 > 0) scan[scan.length - 1] = 0xff >> ((blocks % 4) * 2);
  const table = (name: number): readonly number[] => [0xff, 0xc4, 0, 20, name, 1, ...zeros(15), 0];
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...[0xff, 0xdb, 0, 67, 0, ...zeros(64).map(() => 1)],
    ...[0xff, 0xc0, 0, 11, 8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0],
    ...table(0),
    ...table(0x10),
    ...[0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0],
    ...scan,
    ...[0xff, 0xd9],
  ]);
};

const zeros = (count: number): readonly number[] => Array.from({ length: count }, () => 0);

/** With a segment put in behind the beginning: `Exif` in APP1 (0xe1), a comment (0xfe). */
export const withSegment = (jpeg: Uint8Array, marker: number, text: string): Uint8Array => {
  const inside = Buffer.from(text, 'latin1');
  const head = [0xff, marker, (inside.length + 2) >> 8, (inside.length + 2) & 255];
  return Uint8Array.from(
    Buffer.concat([jpeg.subarray(0, 2), Uint8Array.from(head), inside, jpeg.subarray(2)]),
  );
};

/** What a device would say of it. */
export const sentOf = (copy: Uint8Array, more: Partial<PhotoSent> = {}): PhotoSent => ({
  car: 'C1',
  sha256: sha256(Buffer.concat([copy, Buffer.from('the original')])),
  bytes: 3_400_000,
  type: 'image/jpeg',
  copy: sha256(copy),
  ...more,
});

/** Puts the photograph that a claim will name into the store. */
export const putPhoto = (
  db: Database,
  { car, hash }: { readonly car: string; readonly hash: string },
  by: string,
): Promise<PhotoAnswer> => {
  const copy = drawnJpeg(8, 8);
  return keepPhoto(db, sentOf(copy, { car, sha256: hash }), copy, { person: by, device: null });
};
