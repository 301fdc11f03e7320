/**
 * A JPEG as it may be kept and shown: its picture, and nothing else. What cameras and programs put beside it (EXIF with
 * the place, XMP, comments, whatever follows the end) is left out; only the colour profile stays. Marker by marker, after
 * ITU-T T.81, annex B: nothing is decoded here.
 */

export type Cleaned =
  | { readonly ok: true; readonly bytes: Uint8Array; readonly width: number; readonly height: number }
  | { readonly ok: false };

const BROKEN: Cleaned = { ok: false };

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
/** Baseline, extended and progressive, with Huffman tables: what browsers write and read. */
const FRAMES: ReadonlySet<number> = new Set([0xc0, 0xc1, 0xc2]);
const OTHER_FRAMES: ReadonlySet<number> = new Set([
  0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf,
]);
/** Tables that the picture is made with: Huffman, quantization, restart interval. */
const TABLES: ReadonlySet<number> = new Set([0xc4, 0xdb, 0xdd]);

export const cleanJpeg = (bytes: Uint8Array): Cleaned => {
  if (bytes[0] !== 0xff || bytes[1] !== SOI) return BROKEN;
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let size: { readonly width: number; readonly height: number } | null = null;
  let at = 2;
  let isDrawn = false;
  for (;;) {
    if (bytes[at] !== 0xff) return BROKEN;
    // Any number of fill bytes may stand before a marker.
    while (bytes[at + 1] === 0xff) at += 1;
    const marker = bytes[at + 1];
    if (marker === undefined) return BROKEN;
    if (marker === EOI) {
      if (size === null || !isDrawn) return BROKEN;
      kept.push(bytes.subarray(at, at + 2));
      return { ok: true, bytes: joined(kept), ...size };
    }
    const length = word(bytes, at + 2);
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length || OTHER_FRAMES.has(marker)) return BROKEN;
    const segment = bytes.subarray(at, end);
    if (FRAMES.has(marker)) {
      // A second frame would be another picture, of another size.
      if (size !== null || length < 8) return BROKEN;
      size = { height: word(segment, 5), width: word(segment, 7) };
    } else if (marker === SOS) {
      if (size === null) return BROKEN;
      const next = endOfScan(bytes, end);
      if (next === null) return BROKEN;
      kept.push(bytes.subarray(at, next));
      isDrawn = true;
      at = next;
      continue;
    }
    if (FRAMES.has(marker) || TABLES.has(marker) || isColour(marker, segment)) kept.push(segment);
    at = end;
  }
};

const word = (bytes: Uint8Array, at: number): number => (bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0);

/** JFIF says how the components are meant, Adobe's segment too, and the profile what the colours are. */
const isColour = (marker: number, segment: Uint8Array): boolean =>
  (marker === 0xe0 && segment.length === 18 && begins(segment, 'JFIF\0')) ||
  (marker === 0xe2 && begins(segment, 'ICC_PROFILE\0')) ||
  (marker === 0xee && segment.length === 16 && begins(segment, 'Adobe'));

const begins = (segment: Uint8Array, name: string): boolean =>
  Array.from(name).every((letter, index) => segment[4 + index] === letter.charCodeAt(0));

/** The picture's own bytes go on to the next marker that is neither a stuffed byte nor a restart. */
const endOfScan = (bytes: Uint8Array, from: number): number | null => {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) return null;
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return null;
};

const joined = (parts: readonly Uint8Array[]): Uint8Array => Uint8Array.from(Buffer.concat(parts));
