/** Grades and classes as they stand on a bin: SAE for inch threads, ISO for metric ones, A2 and A4 for stainless steel. */
import type { Thread } from '@/lib/domain/torque/strength';
import type { Family } from './size-words';

/** SAE J429 and J995 (inch), ISO 898-1 (bolts), ISO 898-2 (nuts), ISO 3506 (stainless). Weakest first. */
const GRADES = {
  'in bolt': ['2', '5', '8'],
  'in nut': ['2', '5', '8'],
  'mm bolt': ['4.6', '5.8', '8.8', '9.8', '10.9', '12.9'],
  'mm nut': ['04', '05', '5', '6', '8', '9', '10', '12'],
} as const;
const STAINLESS = ['A2-50', 'A2-70', 'A2-80', 'A4-50', 'A4-70', 'A4-80'];

type Unit = Thread['unit'];

const scaleFor = (unit: Unit, family: Family): readonly string[] =>
  GRADES[`${unit} ${family === 'bolt' ? 'bolt' : 'nut'}`];

/** Does this grade go with such a thing? */
export const fitsGrade = (grade: string, unit: Unit, family: Family): boolean =>
  STAINLESS.includes(grade) || scaleFor(unit, family).includes(grade);

/** `g5`, `8.8`, `class 10`, `A2-70`. */
export const gradeText = (grade: string, unit: Unit, family: Family): string => {
  if (STAINLESS.includes(grade)) return grade;
  return unit === 'in' ? `g${grade}` : family === 'bolt' ? grade : `class ${grade}`;
};

/** What could stand there, for somebody who wrote something else. */
export const gradesFor = (unit: Unit, family: Family): string =>
  `${scaleFor(unit, family)
    .map((each) => gradeText(each, unit, family))
    .join(', ')}, or A2-70 and its like`;

/** How much the one grade bears more than the other: -1, 0, 1; null where the two are not of one scale. */
export const compareGrades = (a: string, b: string, unit: Unit, family: Family): -1 | 0 | 1 | null => {
  if (a === b) return 0;
  const scale = scaleFor(unit, family);
  const [left, right] = [scale.indexOf(a), scale.indexOf(b)];
  // A thin nut (04, 05) is no full-strength nut, so that it is no step of the same ladder.
  if (left < 0 || right < 0 || a.startsWith('0') || b.startsWith('0')) return null;
  return left < right ? -1 : 1;
};

/** Named (`gr 5`, `class 10`), bare where it can be nothing else (`10.9`), or stainless (`A2-70`). */
const NAMED =
  /(?<![\w-])(?:property class|grade|gr\.?|g|class|cl\.?|sae|iso)\s*(\d{1,2}(?:\.\d)?)(?![\w./-])/gu;
const BARE = /(?<=\s)(?<!x\s*)(4\.6|5\.8|8\.8|9\.8|10\.9|12\.9)(?![\w./-])/gu;
const STEEL = /(?<![\w-])(a[24]-(?:50|70|80))(?![\w-])/gu;

/** Every grade that a line in small letters names, and the line without them. */
export const takeGrades = (line: string): { readonly grades: readonly string[]; readonly rest: string } => {
  const grades: string[] = [];
  let rest = line;
  for (const pattern of [NAMED, STEEL, BARE])
    rest = rest.replace(pattern, (_, grade: string) => {
      grades.push(grade.toUpperCase());
      return ' ';
    });
  return { grades, rest };
};
