import { expect, test } from 'vitest';
import { zoneOf } from '@/lib/wire/shop-day';

const ZONES = ['America/Argentina/San_Juan', 'America/New_York', 'America/San_Juan', 'Europe/Berlin', 'UTC'];

test.each([
  ['Berlin', 'Europe/Berlin'],
  [' new york ', 'America/New_York'],
  ['Europe/Berlin', 'Europe/Berlin'],
  ['San Juan', 'San Juan'],
  ['Tenter Row', 'Tenter Row'],
  ['', ''],
])('a zone typed as “%s” is “%s”: a city that two zones are named after chooses none', (typed, zone) => {
  expect(zoneOf(typed, ZONES)).toBe(zone);
});
