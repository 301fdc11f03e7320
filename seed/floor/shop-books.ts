/** What the shop's own books say over these weeks, besides its cars: tools, lots, and the bad news about both. */
import type { Day, PersonId } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import type { World } from '@/lib/domain/world';
import type { DemoPlan } from '@/seed/demo-plans';
import {
  DEMO_LEAD,
  DEMO_OWNER,
  DEMO_PEOPLE,
  TOOL_DROPPED,
  TOOL_READS_HIGH,
  demoTools,
} from '@/seed/demo-shop';
import { addDays } from './calendar';
import type { Calendar } from './calendar';
import { bins, firstBulk, stocktake } from './shelf';
import { LOT_TOO_SOFT, laterLots, openingLots } from './lots';
import {
  FIRST_RATE,
  LATER_RATE,
  halfOfIt,
  hourRate,
  lastOrder,
  openingSupply,
  outsideQuotes,
  tubeNuts,
} from './supply';

/** Enters these at that time of that day. */
export type Shop = (day: Day, time: string, by: PersonId, claims: readonly ShopClaim[]) => void;

/** The first morning: people, tools, the plan, and the bins. */
export const opening = (shop: Shop, { today }: Calendar, opened: Day, plan: DemoPlan): void => {
  shop(opened, '08:00', DEMO_OWNER, peopleUntil(addDays(today, 2)));
  const calibrated = { on: addDays(opened, -14), due: addDays(opened, 350), runOut: addDays(today, -13) };
  shop(opened, '08:30', DEMO_OWNER, demoTools(calibrated));
  shop(opened, '09:00', DEMO_LEAD, [{ type: 'release-plan', plan: plan.hash }]);
  const lots = openingLots(plan.document, (days) => addDays(opened, days));
  shop(opened, '10:00', DEMO_OWNER, lots);
  shop(opened, '13:00', DEMO_LEAD, [bins(plan.document), firstBulk(plan.document)]);
  shop(opened, '11:00', DEMO_OWNER, openingSupply());
  shop(opened, '11:30', DEMO_OWNER, [hourRate(opened, FIRST_RATE), ...outsideQuotes(plan.document.plan)]);
};

/** One paper of one of them runs out the day after tomorrow. */
const peopleUntil = (until: Day): readonly ShopClaim[] =>
  DEMO_PEOPLE.map((claim) =>
    claim.person === 'oswin'
      ? {
          ...claim,
          qualifications: (claim.qualifications ?? []).map((each) =>
            each.key === 'axle' ? { ...each, until } : each,
          ),
        }
      : claim,
  );

/** That day or the one before it. */
const lastWednesday = (day: Day): Day =>
  new Date(`${day}T12:00:00Z`).getUTCDay() === WEDNESDAY ? day : lastWednesday(addDays(day, -1));
const WEDNESDAY = 3;

export const midway = (shop: Shop, calendar: Calendar): void => {
  shop(calendar.day(33), '11:00', DEMO_LEAD, laterLots);
  shop(calendar.day(33), '11:30', DEMO_OWNER, [hourRate(calendar.day(30), LATER_RATE)]);
  const wednesday = lastWednesday(calendar.day(16));
  shop(wednesday, '11:00', DEMO_OWNER, [tubeNuts(wednesday)]);
  shop(calendar.day(25), '09:10', DEMO_LEAD, [
    {
      type: 'record-calibration',
      tool: 'T-05',
      on: calendar.day(26),
      due: addDays(calendar.day(26), 364),
      certificate: 'Oakum Street 4471',
      asFound: [
        { set: '40', delivered: '40.4' },
        { set: '80', delivered: '79.6' },
      ],
    },
  ]);
};

/** What three frames have left over; invented. */
const restsInRack: readonly ShopClaim[] = [
  { type: 'count-remnants', item: 'T60', lengths: ['1985 mm', '1240 mm', '655 mm'] },
  { type: 'count-remnants', item: 'S40', lengths: ['820 mm', '410 mm'] },
];

/** Friday afternoon: somebody walks past the bins with a list. */
export const counting = (shop: Shop, calendar: Calendar, world: World): void => {
  shop(calendar.day(2), '16:20', DEMO_LEAD, [stocktake(world), ...restsInRack]);
};

/** An order that is not whole yet. */
export const buying = (shop: Shop, calendar: Calendar): void => {
  shop(calendar.day(5), '11:30', DEMO_OWNER, [lastOrder(calendar.day(5))]);
  shop(calendar.day(3), '09:40', DEMO_LEAD, [halfOfIt]);
};

/** This week's: a dropped wrench, one that came back reading high, a lot that is too soft. */
export const badNews = (shop: Shop, calendar: Calendar): void => {
  const yesterday = calendar.day(1);
  // Told the morning after; from when it fell, what was tightened with it is in doubt.
  const fell = new Date(calendar.at(calendar.day(2), '13:40')).toISOString();
  shop(yesterday, '08:05', 'oswin', [
    { type: 'suspect-tool', tool: TOOL_DROPPED, reason: 'dropped', from: fell },
  ]);
  // Nine percent: what has room for it in its window clears itself, the rest is in doubt.
  shop(yesterday, '08:35', DEMO_LEAD, [
    {
      type: 'record-calibration',
      tool: TOOL_READS_HIGH,
      on: yesterday,
      due: addDays(yesterday, 364),
      certificate: 'Oakum Street 4512',
      asFound: [
        { set: '20', delivered: '21.8' },
        { set: '60', delivered: '65.4' },
        { set: '100', delivered: '109' },
      ],
    },
  ]);
  shop(yesterday, '16:10', DEMO_LEAD, [
    {
      type: 'quarantine-lot',
      lot: LOT_TOO_SOFT,
      reason: 'Brindle Tube & Line called: threads of this lot are soft. None of it goes on a car.',
    },
  ]);
};
