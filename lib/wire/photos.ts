/** What the door for photographs takes and answers. The browser reads this too, so that it says no before it sends. */

/** What a camera gives may be this long; it is measured on the device and stays there. */
export const MOST_ORIGINAL = 40_000_000;
/** The copy that is sent and kept: no side longer, no more bytes. */
export const LONGEST_SIDE = 1600;
export const MOST_COPY = 1_500_000;
/** With one act. */
export const MOST_PHOTOS = 6;
/** Of one person within an hour: a camera that runs amok, or somebody who means to fill the disk. */
export const MOST_AN_HOUR = 300;

export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** By its first bytes; a name or what a browser calls it may say anything. Null: no picture that is taken here. */
export const photoTypeOf = (bytes: Uint8Array): PhotoType | null => {
  if (has(bytes, 0, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (has(bytes, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (has(bytes, 0, [0x52, 0x49, 0x46, 0x46]) && has(bytes, 8, [0x57, 0x45, 0x42, 0x50])) return 'image/webp';
  return null;
};

const has = (bytes: Uint8Array, at: number, wanted: readonly number[]): boolean =>
  wanted.every((byte, index) => bytes[at + index] === byte);

/** Sent beside the bytes of the copy: of which car, and what the device measured of the original. */
export interface PhotoSent {
  readonly car: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly type: PhotoType;
  /** SHA-256 of the copy as it left the device: bytes that changed on the way are not kept. */
  readonly copy: string;
}

export type PhotoAnswer =
  /** `already`: it was here before. */
  | { readonly outcome: 'kept'; readonly hash: string; readonly already: boolean }
  | {
      readonly outcome:
        | 'bad-input'
        | 'not-signed-in'
        | 'not-allowed'
        | 'not-found'
        | 'refused'
        | 'too-many'
        | 'too-long'
        | 'busy';
      readonly says: string;
    };

export const PHOTO_STATUS: Readonly<Record<PhotoAnswer['outcome'], number>> = {
  kept: 200,
  'bad-input': 400,
  'not-signed-in': 401,
  'not-allowed': 403,
  'not-found': 404,
  refused: 409,
  'too-long': 413,
  'too-many': 429,
  busy: 503,
};

/** Where a kept one is read. */
export const photoHref = (hash: string): string => `/api/photos/${hash}`;
