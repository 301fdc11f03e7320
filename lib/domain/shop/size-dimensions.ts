/** The numbers of a size line: thread, length, hole, tube. What is left here are numbers, an `x` between them, and units. */
import {
  ZERO,
  compare,
  exact,
  multiply,
  parseDecimal,
  parseInches,
  toDecimalText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { either } from '@/lib/domain/base/words';
import type { Thread } from '@/lib/domain/torque/strength';
import type { SizeProblem } from './size-problem';
import { asksLength, familyOf } from './size-words';
import type { Kind } from './size-words';
import { lengthText, threadText, threadsOf } from './thread-table';

type Unit = Thread['unit'];

export interface Dimensions {
  /** That of the thread; else of hole and length. */
  readonly unit: Unit;
  /** Bolts and nuts have one; a washer and a pin have a diameter only. */
  readonly thread: Thread | null;
  /** Of the thread, of the bolt that a washer is for, of a pin. */
  readonly diameter: Exact;
  readonly length: Exact | null;
  /** Of a washer, where it is said. */
  readonly outside: Exact | null;
  /** What a tube nut is for: often of the other unit. */
  readonly tube: { readonly unit: Unit; readonly diameter: Exact } | null;
}

export type Trouble = Omit<SizeProblem, 'understood'>;

interface Reading {
  readonly value: Dimensions | null;
  readonly troubles: readonly Trouble[];
  /** What could be read of it, as it is written. */
  readonly understood: string;
}

const failed = (understood: string, ...troubles: Trouble[]): Reading => ({
  value: null,
  troubles,
  understood,
});

const read = (value: Partial<Dimensions> & Pick<Dimensions, 'unit' | 'diameter'>): Reading => ({
  value: { thread: null, length: null, outside: null, tube: null, ...value },
  troubles: [],
  understood: value.thread === undefined || value.thread === null ? '' : threadText(value.thread),
});

/** Numbers of a line whose words are taken out; `kind` null where no word said what it is. */
export const readDimensions = (kind: Kind | null, line: string): Reading => {
  const [main = '', tube] = line.split(/(?<=\S)\s+for\s+/u);
  const parts = main
    .replace(/\s*-\s*/gu, '-')
    .split(/\s*x\s*/u)
    .map((part) => part.trim());
  const family = kind === null ? 'bolt' : familyOf(kind);
  if (family === 'pin') return readPin(parts);
  if (family === 'washer') return readWasher(kind ?? 'washer', parts);
  const found = readThreaded(kind, parts);
  if (tube === undefined) return found;
  if (found.value === null) return found;
  const size = family === 'tube nut' ? readTube(tube) : null;
  return size === null
    ? failed(found.understood, {
        part: 'tube',
        found: tube,
        expected: 'what a tube nut is for as 4.75 mm or 3/16 in',
      })
    : { ...found, value: { ...found.value, tube: size } };
};

const readTube = (text: string): Dimensions['tube'] => {
  const plain = text.replace(/ tube$/u, '');
  const millimetres = number(plain, 'mm');
  if (millimetres !== null && plain.endsWith('mm')) return { unit: 'mm', diameter: millimetres };
  const inches = number(plain, 'in');
  return inches === null || !/["/n]/u.test(plain) ? null : { unit: 'in', diameter: inches };
};

/** `40`, `40 mm`, `3,2`; `2 1/2`, `2-1/2"`, `.75 in`. Above zero; null for anything else. */
const number = (text: string, unit: Unit): Exact | null => {
  const whole = text.replace(/^[.,]/u, '0.');
  const value =
    unit === 'mm'
      ? parseDecimal(whole.replace(/\s*mm$/u, ''))
      : parseInches(whole.replace(/(?<=\d),(?=\d)/u, '.'));
  return value === null || compare(value, ZERO) <= 0 ? null : value;
};

// ---- bolts and nuts ----

const readThreaded = (kind: Kind | null, parts: readonly string[]): Reading => {
  const [first = '', ...behind] = parts;
  if (/^m\s*\d/u.test(first)) return readMetric(kind, first, behind);
  return readInch(first, behind);
};

const METRIC = /^m\s*(\d+(?:[.,]\d+)?)(?:\s*-\s*(\S+))?(?:\s+(.+))?$/u;

const readMetric = (kind: Kind | null, first: string, behind: readonly string[]): Reading => {
  const [, size = '', hyphened, spaced] = METRIC.exec(first) ?? [];
  const diameter = number(size, 'mm');
  if (diameter === null) return failed('', { part: 'thread', found: first, expected: 'it as M10×1.5' });
  const numbers = [hyphened, ...(spaced === undefined ? [] : [spaced]), ...behind].filter(
    (each) => each !== undefined,
  );
  const known = threadsOf('mm', diameter);
  const [coarse] = known;
  const name = `M${toDecimalText(diameter)}`;
  const [one, two, ...more] = numbers;
  if (more.length > 0)
    return failed(name, { part: 'rest', found: more.join(' x '), expected: 'no more than pitch and length' });

  const isPitch =
    one !== undefined && (two !== undefined || hyphened !== undefined || mayBePitch(kind, one, known));
  if (!isPitch && coarse === undefined)
    return failed(name, {
      part: 'pitch',
      found: '',
      expected: `it too, for ${name} is not among the usual threads`,
    });
  const pitch = isPitch ? number(one, 'mm') : (coarse?.pitch ?? null);
  if (pitch === null || !isPitchOf(diameter, pitch, known))
    return failed(name, { part: 'pitch', found: one ?? '', expected: pitchesOf(name, known) });
  return withLength({ unit: 'mm', diameter, pitch }, isPitch ? two : one);
};

/** One number behind the diameter: a pitch if the table has it, or if it is too small for a length. */
const mayBePitch = (kind: Kind | null, text: string, known: readonly Thread[]): boolean => {
  const value = number(text, 'mm');
  if (value === null) return false;
  if (kind !== null && asksLength(kind) === 'never') return true;
  return known.some(({ pitch }) => compare(pitch, value) === 0) || compare(value, exact(4)) < 0;
};

/** Of a diameter that the table knows only its own; of another any that a thread can have. */
const isPitchOf = (diameter: Exact, pitch: Exact, known: readonly Thread[]): boolean =>
  known.length > 0
    ? known.some((each) => compare(each.pitch, pitch) === 0)
    : compare(multiply(pitch, exact(2)), diameter) < 0;

const pitchesOf = (name: string, known: readonly Thread[]): string =>
  known.length === 0 ? `the pitch of ${name} in mm` : either(known.map(threadText));

const INCH = /^((?:\d+[ -])?\d+\/\d+"?|[\d.,]+"?)-(\d{1,2})(?:\s*un[cf])?(?:\s+(.+))?$/u;
const NAMED = /^(.+?)\s*(un[cf])(?:\s+(.+))?$/u;
/** No bolt in this trade is thicker, so that it must be a numbered size (10-32) or a slip of the finger. */
const THICKEST = exact(2);
const LONGEST = exact(24);

const readInch = (first: string, behind: readonly string[]): Reading => {
  const [, size, count, spaced] = INCH.exec(first) ?? [];
  const [, bare, series, after] = count === undefined ? (NAMED.exec(first) ?? []) : [];
  const text = size ?? bare ?? first;
  const diameter = number(text, 'in');
  if (diameter === null || compare(diameter, THICKEST) > 0)
    return failed('', {
      part: 'thread',
      found: first,
      expected: 'it as 3/8-16 or M10×1.5; a numbered one by its diameter, as 0.190-32',
    });
  const known = threadsOf('in', diameter);
  const name = lengthText('in', diameter);
  const named = series === undefined ? undefined : known[series === 'unc' ? 0 : 1];
  if (count === undefined && named === undefined) {
    const pitches = either(known.map(threadText));
    return failed(name, {
      part: 'pitch',
      found: '',
      expected: known.length === 0 ? `threads to the inch too, as ${name}-20` : pitches,
    });
  }
  const pitch = named?.pitch ?? exact(1, Number(count) || 1);
  const isNamedOtherwise = /unc|unf/u.exec(first)?.[0];
  const isRight =
    isPitchOf(diameter, pitch, known) &&
    (isNamedOtherwise === undefined ||
      known.length === 0 ||
      compare(known[isNamedOtherwise === 'unc' ? 0 : 1]?.pitch ?? ZERO, pitch) === 0);
  if (!isRight)
    return failed(name, {
      part: 'pitch',
      found: first.slice(text.length).replace(/^-/u, ''),
      expected: known.length === 0 ? `a pitch that ${name} can have` : either(known.map(threadText)),
    });
  const numbers = [...((spaced ?? after) === undefined ? [] : [spaced ?? after ?? '']), ...behind];
  const [length, ...more] = numbers;
  if (more.length > 0)
    return failed(name, {
      part: 'rest',
      found: more.join(' x '),
      expected: 'no more than thread and length',
    });
  return withLength({ unit: 'in', diameter, pitch }, length);
};

const withLength = (thread: Thread, text: string | undefined): Reading => {
  const { unit, diameter } = thread;
  if (text === undefined) return read({ unit, thread, diameter });
  const length = number(text, unit);
  if (length === null || (unit === 'in' && compare(length, LONGEST) > 0))
    return failed(threadText(thread), {
      part: 'length',
      found: text,
      expected: unit === 'mm' ? 'it in mm, as ×40' : 'it in inches, as ×2-1/2, ×2 1/2" or ×2.5',
    });
  return read({ unit, thread, diameter, length });
};

// ---- washers and pins ----

const readWasher = (kind: Kind, parts: readonly string[]): Reading => {
  const [first = '', outer, ...more] = parts;
  if (more.length > 0)
    return failed('', {
      part: 'rest',
      found: more.join(' x '),
      expected: 'no more than size and outside diameter',
    });
  const isMetric = /^m\s*\d/u.test(first) || first.endsWith('mm');
  const unit: Unit = isMetric ? 'mm' : 'in';
  const isPlain = isMetric || /["/.n]/u.test(first);
  const diameter = isPlain ? number(first.replace(/^m\s*/u, ''), unit) : null;
  if (diameter === null || (unit === 'in' && compare(diameter, THICKEST) > 0))
    return failed('', {
      part: 'diameter',
      found: first,
      expected: `the bolt that the ${kind} is for, as M8, 3/8 or 10 mm`,
    });
  if (outer === undefined) return read({ unit, diameter });
  const outside = number(outer, unit);
  if (outside === null || compare(outside, diameter) <= 0)
    return failed('', {
      part: 'diameter',
      found: outer,
      expected: 'an outside diameter that is larger than the hole',
    });
  return read({ unit, diameter, outside });
};

/** A pin in fractions, or with inch marks, is in inches; else in millimetres. */
const readPin = (parts: readonly string[]): Reading => {
  const [first = '', second, ...more] = parts;
  if (more.length > 0)
    return failed('', {
      part: 'rest',
      found: more.join(' x '),
      expected: 'no more than diameter and length',
    });
  const unit: Unit = /["/]|in\b/u.test(`${first} ${second ?? ''}`) ? 'in' : 'mm';
  const diameter = number(first, unit);
  if (diameter === null)
    return failed('', { part: 'diameter', found: first, expected: 'it as 3.2×32, or 1/8×1-1/2 in inches' });
  if (second === undefined) return read({ unit, diameter });
  const length = number(second, unit);
  return length === null
    ? failed(lengthText(unit, diameter), {
        part: 'length',
        found: second,
        expected: `it in ${unit === 'in' ? 'inches' : 'millimetres'} as well`,
      })
    : read({ unit, diameter, length });
};
