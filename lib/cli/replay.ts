/** `replay`: plays a day's lines against a plan and tells what the shop would have answered. */
import { nearestWord } from '@/lib/domain/base/nearest';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import { namesOf } from '@/lib/wire/views/names';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import type { Ink } from './ink';
import { carOf } from './play-lines';
import type { PlayedLine } from './play-lines';
import { printAssessment } from './print-assessment';
import { printLines } from './print-verdict';
import { readDay } from './read-day';
import type { ReadDay } from './read-day';
import { carAsJson, lineAsJson } from './replay-json';

export interface ReplayOptions {
  readonly zone: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
  readonly car?: string;
}

export const replay = (planFile: string, linesFile: string, options: ReplayOptions, ink: Ink): Answer => {
  const read = readDay(planFile, linesFile, options.zone, ink);
  return read.ok ? report(read.value, options, ink) : read.error;
};

const report = ({ document, hash, day }: ReadDay, options: ReplayOptions, ink: Ink): Answer => {
  const ids = day.cars.map(({ car }) => car.id);
  if (options.car !== undefined && !ids.includes(options.car)) return unusable(unknownCar(options.car, ids));
  const nameOf = namesOf(document);
  const cars = day.cars.filter(({ car }) => options.car === undefined || car.id === options.car);
  const lines = day.lines.filter((played) => isShown(played, options));
  const exit = day.lines.every(({ isAsExpected }) => isAsExpected) ? 0 : 1;
  const counts = countsOf(day.lines);
  if (options.json === true)
    return {
      exit,
      out: asJson({
        plan: { plan: document.plan, revision: document.revision, hash },
        counts,
        lines: lines.map((played) => lineAsJson(played, nameOf)),
        cars: cars.map((each) => carAsJson(each, nameOf)),
      }),
    };
  const page = { ink, nameOf };
  const calendar = { dayOf: shopDay(options.zone), timeOf: shopTime(options.zone) };
  return {
    exit,
    out: [
      `${document.plan} ${document.revision}, plan ${hash.slice(0, 12)}`,
      ...printLines(lines, page, calendar),
      ...cars.flatMap((each) => ['', ...printAssessment(each, page)]),
      '',
      summary(counts, ink),
    ],
  };
};

const unknownCar = (car: string, ids: readonly string[]): string => {
  const nearest = nearestWord(car, ids);
  const hint = nearest === null ? `Begun were: ${ids.join(', ') || 'none'}.` : `Did you mean “${nearest}”?`;
  return `No car “${car}” was begun in these lines. ${hint}`;
};

/** What did not turn out as the lines say is always shown, whatever the options leave out. */
const isShown = (played: PlayedLine, { quiet, car }: ReplayOptions): boolean => {
  if (!played.isAsExpected) return true;
  if (quiet === true && played.verdict.kind === 'accepted') return false;
  return car === undefined || carOf(played) === car;
};

interface Counts {
  readonly lines: number;
  readonly accepted: number;
  readonly refused: number;
  /** Numbers of the lines that turned out otherwise than they say. */
  readonly unexpected: readonly number[];
}

const countsOf = (lines: readonly PlayedLine[]): Counts => {
  const accepted = lines.filter(({ verdict }) => verdict.kind === 'accepted').length;
  return {
    lines: lines.length,
    accepted,
    refused: lines.length - accepted,
    unexpected: lines.filter(({ isAsExpected }) => !isAsExpected).map(({ read }) => read.number),
  };
};

const summary = ({ lines, accepted, refused, unexpected }: Counts, ink: Ink): string => {
  const found = `${String(lines)} lines: ${String(accepted)} accepted, ${String(refused)} refused`;
  if (unexpected.length > 0) return ink.bad(`${found}; not as expected: line ${unexpected.join(', ')}`);
  return refused === 0 ? found : `${found}, all as expected`;
};
