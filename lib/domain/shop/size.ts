/**
 * The size of an item as one line: `3/8-16 x 2 1/2 gr 5`, `M10x1.25x40 10.9`, `1/4-20 nut gr 5`. Read the same way
 * wherever one is typed, into one record, and written back in one form: whatever was read, written and read again is the same.
 */
import type { Exact } from '@/lib/domain/base/exact';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import type { Thread } from '@/lib/domain/torque/strength';
import { readDimensions } from './size-dimensions';
import type { Dimensions, Trouble } from './size-dimensions';
import { fitsGrade, gradeText, gradesFor, takeGrades } from './size-grade';
import type { SizeProblem } from './size-problem';
import { asksLength, familyOf, readFinish, readKind } from './size-words';
import type { Finish, Kind } from './size-words';
import { lengthText, threadText } from './thread-table';

export interface Size extends Dimensions {
  readonly kind: Kind;
  readonly grade: string | null;
  readonly finish: Finish | null;
  /** What stands behind the first comma: `fitted shank`. Two items that differ only here are two items. */
  readonly note: string | null;
}

/** What nobody means a difference by: signs of multiplication, curly quotes, dashes, gaps. */
const plainly = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\u00d7\u2715\u2716*]/gu, 'x')
    .replace(/[\u2033\u201c\u201d]|''/gu, '"')
    .replace(/[\u2010-\u2015\u2212]/gu, '-')
    .replace(/(?<=[\d"mnfc])\s*[xX]\s*(?=[\d.,])/gu, ' x ')
    .replace(/\s+/gu, ' ')
    .trim();

/** A comma between two digits is a decimal one. */
const NOTE = /,(?!\d)|(?<!\d),/u;

/**
 * Reads a size line. A line with a length and no word for its kind is a bolt. Every part that can't be read is told.
 *
 * @example readSize('3/8-16 x 2 1/2 gr 5') // bolt 3/8-16×2-1/2 g5
 */
export const readSize = (text: string): Result<Size, readonly SizeProblem[]> => {
  const plain = plainly(text);
  const cut = plain.search(NOTE);
  const note = cut < 0 ? '' : plain.slice(cut).replace(/^[\s,]+/u, '');
  const line = ` ${(cut < 0 ? plain : plain.slice(0, cut)).toLowerCase()} `;

  const said = readKind(line);
  const { grades, rest } = takeGrades(said?.rest ?? line);
  const finish = readFinish(rest);
  const { strange, numbers } = withoutStrange(finish?.rest ?? rest);
  const dimensions = readDimensions(said?.word ?? null, numbers);
  const kind = said?.word ?? (dimensions.value?.length ? 'bolt' : null);

  const troubles: Trouble[] = [
    ...(strange === '' ? [] : [{ part: 'rest', found: strange, expected: ASIDE } as const]),
    ...dimensions.troubles,
    ...(kind === null ? [kindMissing(dimensions.value)] : []),
    ...gradeTroubles(grades, kind, dimensions.value),
    ...(kind !== null && dimensions.value !== null ? lengthTroubles(kind, dimensions.value) : []),
  ];
  const [grade = null] = grades;
  if (troubles.length === 0 && kind !== null && dimensions.value !== null)
    return ok({
      kind,
      ...dimensions.value,
      grade,
      finish: finish?.word ?? null,
      note: note === '' ? null : note,
    });
  const understood = [
    said?.word,
    dimensions.understood,
    troubles.some(({ part }) => part === 'grade') ? undefined : grade && `grade ${grade}`,
    finish?.word,
  ]
    .filter((each) => each !== undefined && each !== null && each !== '')
    .join(' ');
  return err(troubles.map((each): SizeProblem => ({ ...each, understood })));
};

const ASIDE = 'it behind a comma if it is a note, as “, fitted shank”';
const OF_NUMBERS = ['mm', 'in', 'unc', 'unf', 'for', 'tube'];

/** Words that mean nothing here, and the line without them. */
const withoutStrange = (line: string): { readonly strange: string; readonly numbers: string } => {
  const strange: string[] = [];
  const numbers = line.replace(/inch(?:es)?/gu, 'in').replace(/(?<!\d)\p{L}[\p{L}-]*\p{L}/gu, (word) => {
    if (OF_NUMBERS.includes(word)) return word;
    strange.push(word);
    return ' ';
  });
  return { strange: strange.join(' '), numbers: numbers.replace(/\s+/gu, ' ').trim() };
};

const kindMissing = (of: Dimensions | null): Trouble => ({
  part: 'kind',
  found: '',
  expected:
    of === null
      ? 'what it is, as bolt, nut, washer or split pin'
      : 'nut or another kind, or the length of a bolt',
});

const gradeTroubles = (
  grades: readonly string[],
  kind: Kind | null,
  of: Dimensions | null,
): readonly Trouble[] => {
  if (grades.length > 1) return [{ part: 'grade', found: grades.join(' and '), expected: 'one grade' }];
  const [grade] = grades;
  if (grade === undefined || of === null || kind === null) return [];
  const family = familyOf(kind);
  if (fitsGrade(grade, of.unit, family)) return [];
  const thing = `${of.unit === 'in' ? 'an inch' : 'a metric'} ${kind}`;
  return [{ part: 'grade', found: grade, expected: `one for ${thing}: ${gradesFor(of.unit, family)}` }];
};

const lengthTroubles = (kind: Kind, { length, unit }: Dimensions): readonly Trouble[] => {
  const asked = asksLength(kind);
  if (length === null && asked === 'must')
    return [{ part: 'length', found: '', expected: unit === 'in' ? 'it as × 1-1/2' : 'it in mm, as ×40' }];
  if (length !== null && asked === 'never')
    return [
      {
        part: 'length',
        found: lengthText(unit, length),
        expected: familyOf(kind) === 'washer' ? 'a washer without one' : 'a nut without one, only its thread',
      },
    ];
  return [];
};

/**
 * The one way a size is written.
 *
 * @example sizeText(read) // 'bolt 3/8-16×2-1/2 g5 zinc, fitted shank'
 */
export const sizeText = (size: Size): string => {
  const { kind, unit, grade, finish, note } = size;
  const words = [
    kind,
    dimensionText(size),
    ...(size.tube === null
      ? []
      : [`for ${lengthText(size.tube.unit, size.tube.diameter)} ${size.tube.unit}`]),
    ...(grade === null ? [] : [gradeText(grade, unit, familyOf(kind))]),
    ...(finish === null ? [] : [finish]),
  ];
  return `${words.join(' ')}${note === null ? '' : `, ${note}`}`;
};

const dimensionText = ({ kind, thread, unit, diameter, length, outside }: Size): string => {
  const behind = length ?? outside;
  return `${sizeOf(kind, thread, unit, diameter)}${behind === null ? '' : `×${lengthText(unit, behind)}`}${
    familyOf(kind) === 'pin' && unit === 'in' ? ' in' : ''
  }`;
};

/** A copper washer is called by its hole, every other washer by its bolt. */
const sizeOf = (kind: Kind, thread: Thread | null, unit: Thread['unit'], diameter: Exact): string => {
  if (thread !== null) return threadText(thread);
  const size = lengthText(unit, diameter);
  if (familyOf(kind) === 'pin') return size;
  // A whole number alone could be of either unit.
  if (unit === 'in') return diameter.den === 1n ? `${size} in` : size;
  return kind === 'copper washer' ? `${size} mm` : `M${size}`;
};
