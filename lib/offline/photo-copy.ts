/**
 * The small copy of a photograph, made on the device: drawn anew, so that neither the place nor the camera goes with it,
 * and turned as it was held. The original is only measured.
 */
import { LONGEST_SIDE, MOST_COPY, MOST_ORIGINAL, photoTypeOf } from '@/lib/wire/photos';
import type { PhotoSent } from '@/lib/wire/photos';
import { fingerprintOf } from './fingerprint';

export interface Copied {
  readonly copy: Blob;
  readonly about: Omit<PhotoSent, 'car'>;
}

export type Copying =
  | ({ readonly ok: true } & Copied)
  /** What is wrong, and what clears it. */
  | { readonly ok: false; readonly says: string };

/** Good enough to read a stripe and a number by; a picture that stays too long is packed harder. */
const QUALITIES = [0.82, 0.65, 0.45];

const no = (says: string): Copying => ({ ok: false, says });

export const copyOf = async (file: Blob): Promise<Copying> => {
  if (file.size > MOST_ORIGINAL)
    return no(
      `It has ${megabytes(file.size)}; at most ${megabytes(MOST_ORIGINAL)} are taken. Take a smaller one.`,
    );
  const bytes = await file.arrayBuffer();
  const type = photoTypeOf(new Uint8Array(bytes, 0, Math.min(16, bytes.byteLength)));
  if (type === null) return no('This is no JPEG, PNG or WebP. Take or choose another one.');
  const copy = await drawn(file);
  if (copy === null) return no('This device can’t read it: it is broken or too large. Take it again.');
  if (copy.size > MOST_COPY) return no('Its copy stays longer than 1.5 MB. Take one with less in it.');
  return {
    ok: true,
    copy,
    about: {
      sha256: await fingerprintOf(bytes),
      bytes: bytes.byteLength,
      type,
      copy: await fingerprintOf(await copy.arrayBuffer()),
    },
  };
};

const megabytes = (bytes: number): string => `${String(Math.round(bytes / 1_000_000))} MB`;

const drawn = async (file: Blob): Promise<Blob | null> => {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext('2d');
    if (pen === null) return null;
    pen.imageSmoothingQuality = 'high';
    // What was see-through would turn black.
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    let copy: Blob | null = null;
    for (const quality of QUALITIES) {
      copy = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
      if (copy === null || copy.size <= MOST_COPY) break;
    }
    return copy;
  } catch {
    return null;
  }
};
