/** A cut plan as the page draws it, and what is proved of it in words. */
import 'server-only';
import { exact } from '@/lib/domain/base/exact';
import { laidBars } from '@/lib/domain/shop/cut-bars';
import type { LaidBar } from '@/lib/domain/shop/cut-bars';
import { pieceKey } from '@/lib/domain/shop/cut-list';
import type { MarkedPiece } from '@/lib/domain/shop/cut-list';
import { lengthText } from '@/lib/domain/shop/sawn';
import { fewestByMaterial } from '@/lib/domain/shop/cutting';
import type { CuttingPlan, CuttingProblem, CuttingScore } from '@/lib/domain/shop/cutting';
import type { CutCar, CutDrawing, CutVerdict, DrawnBar } from '@/lib/wire/views/cutting';
import { counted } from '../board/words';
import { metres, millimetres } from './lengths';

/** What a solver has said. */
export interface FoundPlan {
  readonly plan: CuttingPlan | null;
  readonly score: CuttingScore | null;
  readonly bounds: { readonly newLengths: number };
  readonly proved: { readonly newLengths: boolean; readonly taken: boolean };
}

export interface ToDraw {
  readonly problem: CuttingProblem;
  readonly marked: readonly MarkedPiece[];
  readonly cars: readonly CutCar[];
}

export const cutDrawing = ({ problem, marked, cars }: ToDraw, found: FoundPlan): CutDrawing => {
  const bars = laidBars(problem, found.plan ?? [], marked);
  const longest = Math.max(1, ...bars.map(({ length }) => length));
  const tags = new Map(cars.map((car) => [car.id, car]));
  let fresh = 0;
  return {
    verdict: verdictOf(problem, found),
    ticks: ticksOf(longest, problem.scale),
    bars: bars.map((bar) => {
      if (!bar.isRemnant) fresh += 1;
      const name = bar.isRemnant ? `remnant ${bar.stock}` : `length ${String(fresh)}`;
      return {
        ...drawnBar(bar, name, problem.scale, longest, tags),
        sawing: sawingOf(bar, problem.scale, marked),
      };
    }),
  };
};

const drawnBar = (
  bar: LaidBar,
  name: string,
  scale: number,
  longest: number,
  tags: ReadonlyMap<string, CutCar>,
): Omit<DrawnBar, 'sawing'> => {
  const text = (whole: number): string => millimetres(exact(whole, scale));
  const at = (whole: number): number => whole / longest;
  const good = bar.length - bar.ends;
  const begins = bar.keep === null ? (bar.pieces.at(-1)?.to ?? bar.ends) : good;
  const cars = [...new Set(bar.pieces.map(({ car }) => car))].flatMap((id) => {
    const car = tags.get(id);
    return car === undefined
      ? []
      : [{ car, marks: marksWords(bar.pieces.filter((piece) => piece.car === id)) }];
  });
  const pieces = bar.pieces.map(({ mark, car, from, to }) => ({
    mark,
    length: text(to - from),
    colour: tags.get(car)?.colour ?? null,
    from: at(from),
    to: at(to),
  }));
  const keep = bar.keep === null ? null : text(bar.keep.length);
  return {
    name,
    length: text(bar.length),
    to: at(bar.length),
    pieces,
    off: [
      { from: 0, to: at(bar.ends) },
      { from: at(begins), to: at(bar.length) },
    ].filter(({ from, to }) => to > from),
    keep: bar.keep === null || keep === null ? null : { from: at(bar.keep.from), to: at(good), length: keep },
    says: [
      `${name}, ${text(bar.length)} mm: ${pieces.map(({ mark, length }) => `${mark} ${length}`).join(', ')}`,
      keep === null ? 'nothing to keep' : `keep ${keep}`,
    ].join('; '),
    cars,
  };
};

/** The bar as whoever has sawn it claims it; what is left is reckoned by the rules. */
const sawingOf = (bar: LaidBar, scale: number, marked: readonly MarkedPiece[]): DrawnBar['sawing'] => {
  const kinds = new Map(bar.pieces.map((piece) => [pieceKey(piece.mark, piece.car), piece]));
  return {
    from: bar.isRemnant ? 'rest' : 'new',
    length: lengthText(exact(bar.length, scale)),
    pieces: [...kinds.values()].flatMap(({ mark, car }) => {
      const kind = marked.find((each) => each.mark === mark);
      const count = bar.pieces.filter((each) => each.mark === mark && each.car === car).length;
      return kind === undefined ? [] : [{ car, piece: kind.piece, length: lengthText(kind.length), count }];
    }),
  };
};

/** `4 × H, 2 × E`. */
const marksWords = (pieces: readonly { readonly mark: string }[]): string =>
  [...new Set(pieces.map(({ mark }) => mark))]
    .map((mark) => `${String(pieces.filter((piece) => piece.mark === mark).length)} × ${mark}`)
    .join(', ');

/** A tick at each metre of a bar, at each half of a short one, at each fifth of a roll. */
const ticksOf = (longest: number, scale: number): CutDrawing['ticks'] => {
  const length = longest / scale / 1000;
  const step = length <= 1 ? 0.1 : length <= 3.5 ? 0.5 : length <= 10 ? 1 : 5;
  return Array.from({ length: Math.floor(length / step + 1e-9) + 1 }, (_, at) => {
    const place = at * step;
    return { at: place / length, text: String(Math.round(place * 10) / 10) };
  });
};

const verdictOf = (problem: CuttingProblem, { score, bounds, proved }: FoundPlan): CutVerdict => {
  if (score === null)
    return {
      isProved: false,
      says: 'No plan was found in the time there is.',
      why: 'The list stands below.',
    };
  const { newLengths } = score;
  const few = counted(newLengths, 'new length');
  const parts = `${metres(
    problem.pieces.reduce((sum, { length, count }) => sum + length * count, 0),
    problem.scale,
  )} of parts`;
  if (!proved.newLengths)
    return {
      isProved: false,
      says: `Best found: ${few.toLowerCase()}.`,
      why: `${parts}. No plan has fewer than ${String(bounds.newLengths)}; whether one has fewer than ${String(newLengths)} is not known.`,
    };
  const isLeast = proved.taken ? '' : ' Another plan with as many may take shorter lengths.';
  if (newLengths === 0)
    return { isProved: true, says: 'No new length.', why: `The remnants hold the ${parts}.${isLeast}` };
  return {
    isProved: true,
    says: `${few}, the fewest.`,
    why: `${parts}${newLengths === 1 ? '' : whyNotFewer(problem, newLengths)}.${isLeast}`,
  };
};

/** What a pencil can check, where that is enough. */
const whyNotFewer = (problem: CuttingProblem, newLengths: number): string => {
  if (fewestByMaterial(problem) < newLengths) return '; every plan with fewer was ruled out';
  const { stock, pieces, kerf, scale } = problem;
  const room = (isRemnant: boolean): readonly number[] =>
    stock
      .filter((each) => each.isRemnant === isRemnant)
      .map(({ length, ends }) => Math.max(0, length - ends + kerf));
  const remnants = room(true).reduce((sum, each) => sum + each, 0);
  const holds = (newLengths - 1) * Math.max(0, ...room(false)) + remnants;
  const withCuts = pieces.reduce((sum, { length, count }) => sum + (length + kerf) * count, 0);
  const fewer = counted(newLengths - 1, 'length').toLowerCase();
  const verb = newLengths === 2 && remnants === 0 ? 'holds' : 'hold';
  return `, ${metres(withCuts, scale)} with their cuts; ${fewer}${remnants === 0 ? '' : ' and the remnants'} ${verb} ${metres(holds, scale)}`;
};
