/** One text for one value: RFC 8785 (sorted keys, no blanks, the shortest number), so that a hash means the value. */

/**
 * The canonical text of a JSON value.
 * Throws a TypeError that names the path for whatever JSON can't hold: NaN, Infinity, undefined, BigInt, functions,
 * objects that are not plain, and texts with half a surrogate pair. A value that holds itself is a bug of the caller.
 *
 * @example canonicalJson({ b: 1, a: [true] }) // '{"a":[true],"b":1}'
 */
export const canonicalJson = (value: unknown): string => {
  const text = textOf(value);
  if (text === null) throw new TypeError(faultIn(value, ''));
  return text;
};

/**
 * The same of a value as a store keeps it: fields that are undefined are none.
 *
 * @example storedJson({ b: 1, a: undefined }) // '{"b":1}'
 */
export const storedJson = (value: unknown): string => {
  const text = textOf(value, 'none');
  if (text === null) throw new TypeError(faultIn(value, '', 'none'));
  return text;
};

/** What a field is that is undefined. */
type Absent = 'fault' | 'none';

/** Null where something in it is no JSON; what and where is looked for only then, for almost always all is well. */
const textOf = (value: unknown, absent: Absent = 'fault'): string | null => {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return isWhole(value) ? JSON.stringify(value) : null;
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value)) {
    // By `Array.from`, which also comes to the holes.
    const items = Array.from(value, (item: unknown) => textOf(item, absent));
    return items.includes(null) ? null : `[${items.join(',')}]`;
  }
  if (!isPlain(value)) return null;
  let text = '{';
  // The default order of `sort` is by UTF-16 code unit, which is the order that RFC 8785 asks for.
  for (const key of Object.keys(value).sort()) {
    if (absent === 'none' && value[key] === undefined) continue;
    const field = textOf(value[key], absent);
    if (field === null || !isWhole(key)) return null;
    text += `${text === '{' ? '' : ','}${JSON.stringify(key)}:${field}`;
  }
  return `${text}}`;
};

/** The first thing that JSON can't hold, in the order of the canonical text. */
const faultIn = (value: unknown, path: string, absent: Absent = 'fault'): string => {
  const within: readonly (readonly [string, unknown])[] = Array.isArray(value)
    ? Array.from(value, (each: unknown, at) => [`${path}[${String(at)}]`, each])
    : isPlain(value)
      ? Object.keys(value)
          .filter((key) => absent === 'fault' || value[key] !== undefined)
          .sort()
          .map((key) => [path === '' ? key : `${path}.${key}`, value[key]])
      : [];
  const halfKey = isPlain(value) && Object.keys(value).some((key) => !isWhole(key));
  if (halfKey || (typeof value === 'string' && !isWhole(value)))
    return `${place(path)} holds half a surrogate pair.`;
  const [inner] = within.filter(([, each]) => textOf(each, absent) === null);
  return inner === undefined
    ? `${place(path)} is no JSON value: ${described(value)}.`
    : faultIn(inner[1], inner[0], absent);
};

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> => {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
};

/** With the u flag a whole pair is one character, so that only halves are found; most texts have no pair at all. */
const isWhole = (text: string): boolean => !/[\uD800-\uDFFF]/.test(text) || !/\p{Surrogate}/u.test(text);

const place = (path: string): string => (path === '' ? 'The value' : `“${path}”`);

const described = (value: unknown): string =>
  typeof value === 'number' ? String(value) : typeof value === 'object' ? 'no plain object' : typeof value;
