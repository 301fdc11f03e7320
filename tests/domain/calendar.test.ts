import { expect, test } from 'vitest';
import { mayMoveCalendar } from '@/lib/domain/shop/calendar';

test('the calendar moves before the first car, and stays from then on', () => {
  expect([0, 1, 12].map(mayMoveCalendar)).toEqual([true, false, false]);
});
