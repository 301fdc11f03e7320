/** Trips to the machine shop, and the part that one car gave another. Names, days, figures and prices are invented. */
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Sent } from '@/lib/domain/component-claims';
import { DEMO_LEAD } from '@/seed/demo-shop';
import type { Calendar } from './calendar';
import { addDays } from './calendar';
import { CAR_013 } from './car-013';
import { CAR_014 } from './car-014';
import { CAR_015 } from './car-015';
import { CarWork } from './car-work';
import type { Floor } from './car-work';
import type { Shop } from './shop-books';

const OAKUM = 'oakum';
const FIRST = '1';
const SECOND = '2';

export const outsideWork = (floor: Floor, shop: Shop): void => {
  const { calendar } = floor;
  shop(calendar.day(45), '16:00', DEMO_LEAD, [
    { type: 'set-supplier', supplier: OAKUM, name: 'Oakum Street Machine', orderDays: [1], lead: 7 },
  ]);
  firstTrip(floor, shop, calendar);
  secondTrip(floor, shop, calendar);
  starterComes(floor);
};

const trip = (shop: Shop, calendar: Calendar, nr: string, gone: number, due: Day): void => {
  shop(calendar.day(gone + 1), '15:40', DEMO_LEAD, [
    { type: 'open-trip', trip: nr, supplier: OAKUM, goes: calendar.day(gone), due },
  ]);
};

const at = (floor: Floor, car: string, day: number, time: string): CarWork => {
  const work = new CarWork(floor, car, []);
  work.goTo(day, time);
  return work;
};

const send = (floor: Floor, car: string, [day, time]: [number, string], nr: string, parts: Sent[]): void => {
  at(floor, car, day, time).say('tobit', { type: 'send-parts', trip: nr, parts });
};

/** Two cars' parts in one van; one of them was not touched for want of guides. */
const firstTrip = (floor: Floor, shop: Shop, calendar: Calendar): void => {
  trip(shop, calendar, FIRST, 18, calendar.day(12));
  send(floor, CAR_013, [18, '08:05'], FIRST, [
    { part: 'P-09', work: 'face, crack test' },
    { part: 'P-16', work: 'face both flanges' },
  ]);
  send(floor, CAR_014, [18, '08:09'], FIRST, [
    { part: 'P-02', work: 'skim, cut valve seats, guides' },
    { part: 'P-09', work: 'face, crack test' },
  ]);
  at(floor, CAR_013, 12, '15:10').say('oswin', {
    type: 'return-parts',
    trip: FIRST,
    parts: [
      { part: 'P-09', how: 'done' },
      { part: 'P-16', how: 'done', note: 'took 0.3 off the exhaust side' },
    ],
  });
  at(floor, CAR_014, 12, '15:14').say('oswin', {
    type: 'return-parts',
    trip: FIRST,
    parts: [
      { part: 'P-02', how: 'not-done', note: 'guides on back order until the month’s end' },
      { part: 'P-09', how: 'done' },
    ],
  });
  at(floor, CAR_013, 11, '08:20').say('mara', {
    type: 'receive-part',
    part: 'P-09',
    looked: 'run-out 0.05, no heat cracks under dye',
  });
  at(floor, CAR_014, 11, '08:30').say('mara', {
    type: 'receive-part',
    part: 'P-09',
    looked: 'run-out 0.04, no heat cracks under dye',
  });
  shop(calendar.day(9), '11:15', DEMO_LEAD, [
    {
      type: 'bill-trip',
      trip: FIRST,
      note: 'OS 2207',
      freight: 1800,
      lines: [
        { car: CAR_013, part: 'P-09', money: 3800 },
        { car: CAR_013, part: 'P-16', money: 4600 },
        { car: CAR_014, part: 'P-09', money: 3800 },
        { car: CAR_014, part: 'FR-070', money: 17_500 },
      ],
    },
  ]);
};

/** Out now. */
const secondTrip = (floor: Floor, shop: Shop, calendar: Calendar): void => {
  trip(shop, calendar, SECOND, 3, addDays(calendar.day(3), 14));
  send(floor, CAR_013, [3, '08:05'], SECOND, [{ part: 'P-20', work: 'flow test, new core' }]);
  send(floor, CAR_014, [3, '08:08'], SECOND, [
    { part: 'P-02', work: 'guides are in: skim, cut valve seats' },
  ]);
  send(floor, CAR_015, [3, '08:12'], SECOND, [
    { part: 'P-48', work: 'wash, pressure test' },
    { part: 'P-09', work: 'face, crack test' },
  ]);
};

/** Its own was beyond brushes; slate's was tried and is good. */
const starterComes = (floor: Floor): void => {
  at(floor, CAR_013, 6, '09:40').say('oswin', {
    type: 'receive-part',
    part: 'P-11',
    from: CAR_015,
    serial: 'SM 40117',
  });
};
