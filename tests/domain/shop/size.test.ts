/** Size lines: each line of the tables is how a shop, a supplier's list or a bin writes it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exact } from '@/lib/domain/base/exact';
import { readSize, sizeText } from '@/lib/domain/shop/size';
import type { Size } from '@/lib/domain/shop/size';
import { sizeProblemSentence } from '@/lib/domain/shop/size-problem';
import { FINISHES, KINDS, asksLength, familyOf } from '@/lib/domain/shop/size-words';
import { isStandard, lengthText, threadText, threadsOf } from '@/lib/domain/shop/thread-table';
import { parseThread } from '@/lib/domain/torque/strength';
import { runs } from '@/tests/support/rules';

const written = (line: string): string => {
  const read = readSize(line);
  return read.ok ? sizeText(read.value) : `NO: ${read.error.map(sizeProblemSentence).join(' | ')}`;
};

test.each([
  // The two lines that issue and design give, and the brief's others.
  ['3/8-16 x 2 1/2 gr 5', 'bolt 3/8-16×2-1/2 g5'],
  ['M10x1.25x40 10.9', 'bolt M10×1.25×40 10.9'],
  ['1/4-20 nut gr 5', 'nut 1/4-20 g5'],
  ['1/2-13x1-3/4', 'bolt 1/2-13×1-3/4'],
  // Gaps, signs, inch marks, decimals, capital letters: no difference.
  ['3/8-16×2-1/2" Grade 5', 'bolt 3/8-16×2-1/2 g5'],
  ['3/8 - 16 X 2.5 in g5', 'bolt 3/8-16×2-1/2 g5'],
  ['0.375-16 x 2 1/2 SAE 5', 'bolt 3/8-16×2-1/2 g5'],
  ['3/8"-16 2-1/2 gr.5', 'bolt 3/8-16×2-1/2 g5'],
  // Dashes and curly marks, as a word processor makes them.
  ['3/8\u201316 \u00d7 2\u20131/2\u2033 gr 5', 'bolt 3/8-16×2-1/2 g5'],
  ['3/8 UNC x 2 1/2 gr 5', 'bolt 3/8-16×2-1/2 g5'],
  ['3/8-24 UNF x 1 g8', 'bolt 3/8-24×1 g8'],
  ['1 1/8-12 x 4 g8', 'bolt 1-1/8-12×4 g8'],
  ['0.190-32 x .75', 'bolt 0.19-32×3/4'],
  ['10.9 zinc plated bolt m8 x 30', 'bolt M8×1.25×30 10.9 zinc'],
  ['M8 x 1,25 x 30 class 8.8', 'bolt M8×1.25×30 8.8'],
  ['M10-1.5 x 40 mm A2-70', 'bolt M10×1.5×40 A2-70'],
  ['M5×12', 'bolt M5×0.8×12'],
  // One number behind a metric diameter: a pitch that the table has is a pitch, anything longer is a length.
  ['banjo bolt M10x1', 'banjo bolt M10×1'],
  ['stud M8x1x20', 'stud M8×1×20'],
  ['M20x2.5x80 8.8', 'bolt M20×2.5×80 8.8'],
  // Nuts, washers, pins and tube nuts as the demo plan's catalogue has them.
  ['nyloc M8 class 8', 'insert lock nut M8×1.25 class 8'],
  ['all metal lock nut 3/8-24 g8', 'all-metal lock nut 3/8-24 g8'],
  ['M14x1.5 jam nut cl 05', 'thin nut M14×1.5 class 05'],
  ['tube nut M10×1 for 4.75 mm', 'tube nut M10×1 for 4.75 mm'],
  ['flare nut 3/8-24 for 3/16 in tube', 'tube nut 3/8-24 for 3/16 in'],
  ['flat washer M8', 'washer M8'],
  ['7/16 hardened washer', 'hardened washer 7/16'],
  ['fender washer M8x30', 'penny washer M8×30'],
  ['copper washer 10mm', 'copper washer 10 mm'],
  ['1 in washer', 'washer 1 in'],
  ['cotter pin 1/8 x 1 1/2', 'split pin 1/8×1-1/2 in'],
  ['split pin 3,2x32', 'split pin 3.2×32'],
  // What stands behind a comma is a note, and tells two items apart.
  ['bolt 3/8-24×1-1/4 g8, fitted shank', 'bolt 3/8-24×1-1/4 g8, fitted shank'],
  ['bolt M8×1.25×25 10.9 black, dry', 'bolt M8×1.25×25 10.9 black, dry'],
])('%s is %s', (line, canonical) => {
  expect(written(line)).toBe(canonical);
  expect(written(canonical)).toBe(canonical);
});

test.each([
  [
    'M10x1.35x40 8.8',
    'The pitch can’t be read: “1.35”. Understood so far: M10 grade 8.8. Write M10×1.5, M10×1.25 or M10×1.',
  ],
  ['M10x1.4', 'The pitch can’t be read: “1.4”.'],
  ['M20x80', 'The pitch is missing. Understood so far: M20. Write it too'],
  ['3/8 x 2 1/2 gr 5', 'The pitch is missing. Understood so far: 3/8 grade 5. Write 3/8-16 or 3/8-24.'],
  ['3/8-18 x 2', 'The pitch can’t be read: “18”. Understood so far: 3/8. Write 3/8-16 or 3/8-24.'],
  ['3/8-24 UNC x 2', 'The pitch can’t be read'],
  [
    '10-32 x 1/2',
    'The thread can’t be read: “10-32”. Write it as 3/8-16 or M10×1.5; a numbered one by its diameter',
  ],
  ['3/8-16', 'The kind of thing is missing.'],
  ['bolt 3/8-16', 'The length is missing. Understood so far: bolt 3/8-16. Write it as × 1-1/2.'],
  ['nut 3/8-16 x 2', 'The length can’t be read: “2”. Understood so far: nut 3/8-16.'],
  ['3/8-16 x 40 mm', 'The length can’t be read: “40 mm”. Understood so far: 3/8-16. Write it in inches'],
  ['3/8-16 x 60', 'The length can’t be read: “60”.'],
  ['M10x40"', 'The length can’t be read: “40"”. Understood so far: M10×1.5. Write it in mm, as ×40.'],
  [
    'M10x40 gr 5',
    'The grade can’t be read: “5”. Understood so far: M10×1.5. Write one for a metric bolt: 4.6, 5.8, 8.8',
  ],
  ['3/8-16 x 2 8.8', 'Write one for an inch bolt: g2, g5, g8'],
  ['M8 x 30 8.8 10.9', 'Write one grade.'],
  [
    'belt bolt 7/16-20 x 1-1/4 g8',
    '“belt”. Understood so far: bolt 7/16-20 grade 8. Write it behind a comma',
  ],
  ['washer 8.4', 'The diameter can’t be read: “8.4”.'],
  ['washer 8', 'The diameter can’t be read: “8”.'],
  ['penny washer M8x6', 'an outside diameter that is larger than the hole'],
  [
    'split pin 1/8 x 20 mm',
    'The length can’t be read: “20 mm”. Understood so far: split pin 1/8. Write it in inches as well.',
  ],
  ['nut M10 for 4.75 mm', 'The tube can’t be read'],
  ['M10x1.5x40x3', 'no more than pitch and length'],
  ['', 'The thread is missing.'],
  ['x x x', 'The thread is missing.'],
])('%s is told: %s', (line, said) => {
  expect(written(line)).toContain(`NO: `);
  expect(written(line)).toContain(said);
});

describe('threads', () => {
  // standards.md 1.2, sources A B C S there: UNC and UNF, 1/4 to 3/4.
  const inch =
    '1/4-20 1/4-28 5/16-18 5/16-24 3/8-16 3/8-24 7/16-14 7/16-20 1/2-13 1/2-20 9/16-12 9/16-18 5/8-11 5/8-18 3/4-10 3/4-16';
  // standards.md 1.3, sources P L R Y there.
  const metric =
    'M5×0.8 M6×1 M8×1.25 M8×1 M10×1.5 M10×1.25 M10×1 M12×1.75 M12×1.5 M12×1.25 M14×2 M14×1.5 M16×2 M16×1.5';

  test.each([...inch.split(' '), ...metric.split(' ')])('%s is a standard thread', (text) => {
    const thread = parseThread(text);
    expect(thread !== null && isStandard(thread)).toBe(true);
    expect(thread === null ? '' : threadText(thread)).toBe(text);
  });

  test.each([
    // The coarse pitch of each diameter, the first of its rows in standards.md 1.2 and 1.3 (ISO 261 for metric ones).
    ['M5', 'M5×0.8'],
    ['M8', 'M8×1.25'],
    ['M10', 'M10×1.5'],
    ['M12', 'M12×1.75'],
    ['M14', 'M14×2'],
    ['M16', 'M16×2'],
  ])('%s alone is coarse: %s', (short, long) => {
    expect(written(`nut ${short}`)).toBe(`nut ${long}`);
  });

  test.each(['3/8-18', 'M10x1.35', 'M8x1.5'])('%s is none', (text) => {
    const thread = parseThread(text);
    expect(thread !== null && isStandard(thread)).toBe(false);
  });
});

const sizes: fc.Arbitrary<Size> = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    unit: fc.constantFrom('in' as const, 'mm' as const),
    inch: fc.constantFrom('1/4-20', '3/8-24', '1/2-13', '3/4-16', '0.19-32', '1-1/8-12'),
    metric: fc.constantFrom('M5×0.8', 'M8×1', 'M10×1.25', 'M12×1.75', 'M20×2.5'),
    length: fc.integer({ min: 16, max: 1536 }),
    decimal: fc.boolean(),
    has: fc.boolean(),
    grade: fc.nat({ max: 3 }),
    finish: fc.option(fc.constantFrom(...FINISHES)),
    note: fc.option(fc.constantFrom('fitted shank', 'cone 60°', 'dry, restraint', '2 off')),
    tube: fc.option(
      fc.constantFrom(
        { unit: 'mm' as const, diameter: exact(19, 4) },
        { unit: 'in' as const, diameter: exact(3, 16) },
      ),
    ),
  })
  .map((drawn): Size => {
    const { kind, unit, finish, note } = drawn;
    const family = familyOf(kind);
    const thread = parseThread(unit === 'in' ? drawn.inch : drawn.metric);
    if (thread === null) throw new Error('no thread');
    const isThreaded = family === 'bolt' || family === 'nut' || family === 'tube nut';
    const asked = asksLength(kind);
    const own =
      unit === 'mm'
        ? exact(drawn.length, drawn.decimal ? 2 : 1)
        : exact(drawn.length, drawn.decimal ? 100 : 64);
    const isLong = asked === 'must' || (asked === 'may' && drawn.has);
    const grades =
      family === 'bolt'
        ? { in: ['2', '5', '8'], mm: ['8.8', '10.9', 'A2-70'] }
        : { in: ['2', '5', '8'], mm: ['04', '8', '10'] };
    return {
      kind,
      unit,
      thread: isThreaded ? thread : null,
      diameter: thread.diameter,
      length: isLong ? own : null,
      outside: family === 'washer' && drawn.has ? exact(drawn.length + 30) : null,
      tube: family === 'tube nut' ? drawn.tube : null,
      grade: isThreaded ? (grades[unit][drawn.grade] ?? null) : null,
      finish,
      note,
    };
  });

test('what was written is read as the same', () => {
  fc.assert(
    fc.property(sizes, (size) => {
      const text = sizeText(size);
      const read = readSize(text);
      expect(read, text).toEqual({ ok: true, value: size });
    }),
    runs(400),
  );
});

test('lengths are written as the shop says them, and exactly', () => {
  expect(lengthText('in', exact(5, 2))).toBe('2-1/2');
  expect(lengthText('in', exact(63, 100))).toBe('0.63');
  expect(lengthText('in', exact(1, 3))).toBe('1/3');
  expect(lengthText('mm', exact(475, 100))).toBe('4.75');
  expect(threadsOf('in', exact(1, 3))).toEqual([]);
});
