/** The body of a request, as far as it may go: what is longer is not read to its end. */
import 'server-only';

/** Null: it is longer than this, or no text in UTF-8. */
export const limitedBody = async (request: Request, most: number): Promise<string | null> => {
  const bytes = await limitedBytes(request, most);
  if (bytes === null) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

/** Null: it is longer than this. */
export const limitedBytes = async (request: Request, most: number): Promise<Uint8Array | null> => {
  if (Number(request.headers.get('content-length') ?? '0') > most) return null;
  const reader = request.body?.getReader();
  if (reader === undefined) return new Uint8Array();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    // What the length says may be a lie: bytes are counted as they come.
    if (length > most) {
      await reader.cancel();
      return null;
    }
    chunks.push(value);
  }
  return Buffer.concat(chunks);
};
