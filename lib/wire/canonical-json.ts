/** One text for one value: RFC 8785 (sorted keys, no blanks, the shortest number), so that a hash means the value. */

/**
 * The canonical text of a JSON value.
 * Throws a TypeError that names the path for whatever JSON can't hold: NaN, Infinity, undefined, BigInt, functions,
 * objects that are not plain, and texts with half a surrogate pair. A value that holds itself is a bug of the caller.
 *
 * @example canonicalJson({ b: 1, a: [true] }) // '{"a":[true],"b":1}'
 */
export const canonicalJson = (value: unknown): string => textOf(value, '');

const textOf = (value: unknown, path: string): string => {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return quoted(value, path);
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value))
    return `[${Array.from(value, (each: unknown, at) => textOf(each, `${path}[${String(at)}]`)).join(',')}]`;
  if (!isPlain(value)) throw new TypeError(`${place(path)} is no JSON value: ${described(value)}.`);
  // The default order of `sort` is by UTF-16 code unit, which is the order that RFC 8785 asks for.
  const fields = Object.keys(value)
    .sort()
    .map((key) => `${quoted(key, path)}:${textOf(value[key], path === '' ? key : `${path}.${key}`)}`);
  return `{${fields.join(',')}}`;
};

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> => {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
};

const quoted = (text: string, path: string): string => {
  // With the u flag a whole pair is one character, so that only halves are found.
  if (/\p{Surrogate}/u.test(text)) throw new TypeError(`${place(path)} holds half a surrogate pair.`);
  return JSON.stringify(text);
};

const place = (path: string): string => (path === '' ? 'The value' : `“${path}”`);

const described = (value: unknown): string =>
  typeof value === 'number' ? String(value) : typeof value === 'object' ? 'no plain object' : typeof value;
