/**
 * Sends the copy of a photograph. It is kept under its fingerprint, so that asking again can't keep it twice; only when
 * it is kept may a command name it.
 */
import { PHOTO_STATUS } from '@/lib/wire/photos';
import type { PhotoAnswer, PhotoSent } from '@/lib/wire/photos';

const PATIENCE_MS = 60_000;
const WAITS_MS = [0, 1000, 3000];

const LOST: PhotoAnswer = {
  outcome: 'busy',
  says: 'No answer came. It is still here: send it again when the line is back.',
};

/** Never rejects. `onProgress` is told which part is on its way, 0 to 1. */
export const sendPhoto = async (
  copy: Blob,
  about: PhotoSent,
  onProgress: (part: number) => void,
): Promise<PhotoAnswer> => {
  let last: PhotoAnswer = LOST;
  for (const wait of WAITS_MS) {
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    last = (await tryOnce(copy, about, onProgress)) ?? LOST;
    if (last.outcome !== 'busy') return last;
  }
  return last;
};

/** Null where no readable answer came. Not `fetch`, which does not say how far it is. */
const tryOnce = (
  copy: Blob,
  about: PhotoSent,
  onProgress: (part: number) => void,
): Promise<PhotoAnswer | null> =>
  new Promise((resolve) => {
    const request = new XMLHttpRequest();
    const query = new URLSearchParams({ ...about, bytes: String(about.bytes) });
    request.open('POST', `/api/photos?${query.toString()}`);
    request.setRequestHeader('content-type', 'image/jpeg');
    request.timeout = PATIENCE_MS;
    request.upload.onprogress = ({ loaded, total }) => onProgress(total === 0 ? 0 : loaded / total);
    request.onload = () => resolve(answerIn(request.responseText));
    request.onerror = () => resolve(null);
    request.ontimeout = () => resolve(null);
    request.onabort = () => resolve(null);
    request.send(copy);
  });

const answerIn = (text: string): PhotoAnswer | null => {
  try {
    const read: unknown = JSON.parse(text);
    return isAnswer(read) ? read : null;
  } catch {
    return null;
  }
};

const isAnswer = (read: unknown): read is PhotoAnswer =>
  typeof read === 'object' &&
  read !== null &&
  'outcome' in read &&
  typeof read.outcome === 'string' &&
  read.outcome in PHOTO_STATUS;
