/** JSON as strangers send it: what a lenient reader would pass over is a fault here. */
import { canonicalJson } from './canonical-json';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';

/** The value, or what is wrong with the text, in words. */
export const strictJson = (text: string): Result<unknown, string> => {
  try {
    const value: unknown = JSON.parse(text);
    // Numbers beyond all bounds and halves of characters parse, but nothing can be said of them again.
    if (MAY_BE_NOTHING.test(text)) canonicalJson(value);
    const twice = fieldTwice(text);
    return twice === null ? ok(value) : err(`The field “${twice}” stands there twice.`);
  } catch (error) {
    if (error instanceof SyntaxError) return err('This can’t be read as JSON.');
    if (error instanceof TypeError) return err(error.message);
    if (error instanceof RangeError) return err('Brackets are nested too deeply to be read.');
    throw error;
  }
};

/** Texts without any of these hold neither; most have none. */
const MAY_BE_NOTHING = /[\uD800-\uDFFF]|\\u[dD]|\d[eE]|\d{300}/;

const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\]:,]/g;

/**
 * The first field that one object has twice, or `__proto__`, which is no field of anything; else null. Of two the
 * reader keeps the last: whoever checked the first would have checked something else. The text is sound JSON.
 */
const fieldTwice = (text: string): string | null => {
  const open: (Set<string> | null)[] = [];
  let last = '';
  for (const [token] of text.matchAll(TOKEN)) {
    if (token === '{') open.push(new Set());
    else if (token === '[') open.push(null);
    else if (token === '}' || token === ']') open.pop();
    else if (token === ':') {
      const field = JSON.parse(last) as string;
      const fields = open.at(-1);
      if (field === '__proto__' || fields?.has(field) === true) return field;
      fields?.add(field);
    } else last = token;
  }
  return null;
};
