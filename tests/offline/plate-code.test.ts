import { describe, expect, test } from 'vitest';
import { isPlateOf } from '@/components/sign-off/model/plate-code';

const car = { id: 'C54-012', chassis: 'C54-012' };

describe('a plate’s code', () => {
  test.each([
    'C54-012',
    'c54 012',
    'C54012',
    ' c54-012\r',
    'https://shop.example/cars/C54-012',
    'https://shop.example/cars/C54%2D012#joint:J-1',
  ])('%s is this car’s', (text) => {
    expect(isPlateOf(text, car)).toBe(true);
  });

  test.each(['', '   ', '---', 'C54-013', 'C54-01', 'C54-0122', '%', 'https://shop.example/cars/C54-013'])(
    '“%s” is not',
    (text) => {
      expect(isPlateOf(text, car)).toBe(false);
    },
  );

  test('the number stamped on the chassis counts as well as the shop’s own', () => {
    const renamed = { id: 'four', chassis: 'LGT-0004' };
    expect(isPlateOf('lgt 0004', renamed)).toBe(true);
    expect(isPlateOf('Four', renamed)).toBe(true);
  });
});
