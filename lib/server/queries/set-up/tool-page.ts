/** One tool: what it can do, how far it may be believed, and what it touched since it was last known to be good. */
import 'server-only';
import { toDecimalText } from '@/lib/domain/base/exact';
import type { Instant, ToolId } from '@/lib/domain/base/vocabulary';
import { fromExactText } from '@/lib/domain/car/joint';
import type { Mark } from '@/lib/domain/car/joint-rows';
import type { SuspectInterval, Tool } from '@/lib/domain/torque/tool';
import { lastCalibration } from '@/lib/domain/torque/tool';
import type { Database } from '@/lib/server/database';
import { loadEveryCar } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import { nameOfPerson, namesOf } from '@/lib/wire/views/names';
import { SUSPECT_WORDS } from '@/lib/wire/views/suspect-words';
import type { ToolPageView, ToolTouch } from '@/lib/wire/views/set-up';
import { dayWords, whenWords } from '@/lib/wire/views/when';
import { touchesOf } from './tool-touches';
import type { Touch } from './tool-touches';
import { toolOf } from './tools';

/** Null where there is no such tool. */
export const toolPageView = async (db: Database, id: ToolId): Promise<ToolPageView | null> => {
  const [shop, { zone }, cars] = await Promise.all([loadShop(db), shopSetting(db), loadEveryCar(db)]);
  const tool = shop.tools[id];
  if (tool === undefined) return null;
  const plans = await loadPlans(
    db,
    cars.map(({ plan }) => plan),
  );
  const dayOf = shopDay(zone);
  const today = dayOf(new Date().toISOString());
  const when = whenWords(zone, today);
  const since = lastGood(tool);
  const touches = touchesOf(cars, shop, id)
    // The day itself counts: nobody knows at which hour of it the bench had the tool.
    .filter(({ mark }) => since === null || dayOf(mark.at) >= since)
    .sort(
      (a, b) => Number(b.remedy !== null) - Number(a.remedy !== null) || (a.mark.at < b.mark.at ? 1 : -1),
    );
  const lineOf = ({ car, joint, mark, remedy }: Touch): ToolTouch => {
    const document = plans[car.plan];
    return {
      car: car.id,
      chassis: car.chassis,
      colour: car.colour,
      isDelivered: car.delivered,
      joint,
      name: (document === undefined ? null : namesOf(document)(joint)) ?? 'joint',
      href: `/cars/${encodeURIComponent(car.id)}/joints/${encodeURIComponent(joint)}`,
      got: gotWords(mark),
      when: when(mark.at),
      who: nameOfPerson(shop.people, mark.by, mark.at),
      doubt: remedy === null ? null : REMEDY[remedy],
    };
  };
  return {
    tool: toolOf(tool, today, touches),
    since: since === null ? null : dayWords(since, today),
    touches: touches.map(lineOf),
    cars: new Set(touches.map(({ car }) => car.id)).size,
    calibrations: tool.calibrations.toReversed().map(({ on, due, certificate }) => ({
      says: `${dayWords(on, today)}, good to ${dayWords(due, today)}`,
      certificate: certificate ?? null,
    })),
    suspect: tool.suspect.toReversed().map((interval) => suspectWords(interval, when)),
    today,
  };
};

const REMEDY: Readonly<Record<NonNullable<Touch['remedy']>, string>> = {
  recheck: 'apply again: it may be loose',
  retorque: 'torque again',
  renew: 'slacken and renew: it may be too tight',
};

/** The day of its last calibration, or of an earlier one where it was found wrong from then on. */
const lastGood = (tool: Tool): string | null => {
  const days = [lastCalibration(tool)?.on, ...tool.suspect.map(({ from }) => from.slice(0, 10))];
  return days.filter((day) => day !== undefined).sort()[0] ?? null;
};

const gotWords = ({ extremes, window }: Mark): string => {
  if (extremes === null || window === null) return 'no value';
  const text = (value: string | null): string =>
    value === null ? '' : toDecimalText(fromExactText(value), 2);
  const [least, most] = [text(extremes.least), text(extremes.most)];
  const got = least === most ? least : `${least} to ${most}`;
  const asked =
    window.low === null
      ? `at most ${text(window.high)}`
      : window.high === null
        ? `at least ${text(window.low)}`
        : `${text(window.low)} to ${text(window.high)}`;
  return `${got} of ${asked} ${window.unit}`;
};

const suspectWords = (
  { from, until, reason, low, high }: SuspectInterval,
  when: (at: Instant) => string,
) => ({
  says: `${SUSPECT_WORDS[reason]}, from ${when(from)} ${until === null ? 'until somebody tests it' : `to ${when(until)}`}`,
  found:
    low === null || high === null
      ? 'not tested: it may have read low or high'
      : `found between ${signed(low)} % and ${signed(high)} %`,
  isOpen: until === null,
});

const signed = (text: string): string => {
  const short = String(Math.round(Number(text) * 100) / 100);
  return short.startsWith('-') ? `−${short.slice(1)}` : `+${short}`;
};
