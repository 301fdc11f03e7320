/**
 * Where a joint's fasteners are drawn. The plan says how many there are and in which pattern, not where they sit on
 * the part, so the drawing is of the pattern: a row, a ring, two rows. Each keeps the number that the record uses.
 */
import type { Pattern } from '@/lib/domain/plan/document';
import type { DrawingView, JointView } from '@/lib/wire/views/sign-off';

/** The ground it is drawn on. */
const WIDTH = 300;
const HEIGHT = 356;
/** From the edge to the middle of a head, so that its slip mark stays on the part. */
const MARGIN = 72;
const CENTRE = { x: WIDTH / 2, y: HEIGHT / 2 };

interface Point {
  readonly x: number;
  readonly y: number;
}

export const drawingView = (
  joint: Pick<JointView, 'fasteners' | 'order' | 'word'>,
  pattern: Pattern | readonly number[] | undefined,
): DrawingView => {
  const { fasteners, order, word } = joint;
  const laid = placed(fasteners, pattern);
  const points = laid.map(({ x, y }, index) => ({ fastener: index + 1, x: Math.round(x), y: Math.round(y) }));
  return { radius: radiusFor(laid), points, says: says(fasteners, order, word, pattern) };
};

const says = (
  fasteners: number,
  order: readonly number[],
  word: JointView['word'],
  pattern: Pattern | readonly number[] | undefined,
): string => {
  if (fasteners === 1) return `one ${word.one}`;
  const how = typeof pattern === 'string' ? PATTERN_WORDS[pattern] : 'in the order of the plan';
  return `${String(fasteners)} ${word.many}, ${how}: ${order.join(', ')}`;
};

const PATTERN_WORDS: Readonly<Record<Pattern, string>> = {
  line: 'one after the other',
  circle: 'round the circle',
  cross: 'crosswise',
  star: 'in a star',
  spiral: 'from the middle outwards',
  'from-centre': 'from the middle outwards',
};

const placed = (count: number, pattern: Pattern | readonly number[] | undefined): readonly Point[] => {
  if (count === 1) return [CENTRE];
  if (count === 4 && isRound(pattern)) return square();
  if (count >= 3 && isRound(pattern)) return ring(count);
  if (pattern === 'from-centre' || pattern === 'spiral') return pairs(count);
  return rows(count);
};

const isRound = (pattern: Pattern | readonly number[] | undefined): boolean =>
  pattern === 'cross' || pattern === 'star' || pattern === 'circle';

/** Numbered clockwise from the top left, so that crosswise is 1 3 2 4. */
const square = (): readonly Point[] => [
  { x: 82, y: 84 },
  { x: 218, y: 84 },
  { x: 218, y: 272 },
  { x: 82, y: 272 },
];

/** Clockwise from the top. */
const ring = (count: number): readonly Point[] =>
  Array.from({ length: count }, (_, index) => {
    const turn = (index / count) * 2 * Math.PI - Math.PI / 2;
    return { x: CENTRE.x + 88 * Math.cos(turn), y: CENTRE.y + 106 * Math.sin(turn) };
  });

/** Two rows, numbered zigzag, so that the numbers in the middle lie in the middle. */
const pairs = (count: number): readonly Point[] => {
  const columns = Math.ceil(count / 2);
  return Array.from({ length: count }, (_, index) => ({
    x: index % 2 === 0 ? 88 : 212,
    y: spread(Math.floor(index / 2), columns, MARGIN, HEIGHT - MARGIN),
  }));
};

/** As one reads: a row of two, a column up to six, then columns side by side. */
const rows = (count: number): readonly Point[] => {
  if (count === 2) return [82, 218].map((x) => ({ x, y: CENTRE.y }));
  const columns = Math.ceil(count / 6);
  const depth = Math.ceil(count / columns);
  return Array.from({ length: count }, (_, index) => ({
    x: spread(Math.floor(index / depth), columns, 82, WIDTH - 82),
    y: spread(index % depth, depth, MARGIN, HEIGHT - MARGIN),
  }));
};

const spread = (index: number, count: number, from: number, to: number): number =>
  count === 1 ? (from + to) / 2 : from + (index * (to - from)) / (count - 1);

/** As large as fits between neighbours with their washers. */
const radiusFor = (points: readonly Point[]): number => {
  const gaps = points.flatMap((a, index) =>
    points.slice(index + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)),
  );
  return Math.round(Math.min(36, ...gaps.map((gap) => gap / 2.8)));
};
