import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, compare, exact, subtract, toNumber } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import { deliveredFromSetting, settingForDelivered } from '@/lib/domain/torque/adapter';
import type { Lever } from '@/lib/domain/torque/adapter';

const lever = (length: number, extension: number, angle = 0): Lever => ({
  length: exact(length),
  extension: exact(extension),
  angle,
});

const feet = (num: number, den: number) => exact(num, den);

/** Wanted at the fastener, lever, printed setting, and the last digit printed (0: exact). */
const published: readonly [source: string, wanted: number, lever: Lever, setting: number, digit: number][] = [
  // lbf·in: http://firetrucksandequipment.tpub.com/TM-9-254/css/TM-9-254_91.htm
  ['US Army TM 9-254', 70, lever(12, 2), 60, 0],
  // lbf·ft: http://constructioncranes.tpub.com/TM-5-3810-305-23/TM-5-3810-305-2301357.html
  ['US Army TM 5-3810-305-23', 300, lever(18, 6), 225, 0],
  // lbf·in: http://www.tpub.com/air/3-8.htm
  ['US Navy course', 100, lever(12, 6), 66.7, 0.1],
  // lbf·ft: http://torqwrench.com/Info/extens.php
  ['torqwrench.com', 30, lever(12, 6), 20, 0],
  // lbf·ft, lengths in feet: https://manualshive.com/en/manual/piper-aircraft-corporation/pa-28-161-cadet/pa-28-161-cadet_maintenance-manual_1558865-67.html
  ['Piper PA-28-161', 30, { length: feet(1, 1), extension: feet(1, 4), angle: 0 }, 24, 0],
  // lbf·ft: https://www.easymanua.ls/performance-tool/m199/manual?p=7
  ['Performance Tool M199', 50, lever(16, 2), 44.44, 0.01],
];

const positives = fc
  .tuple(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 1, max: 64 }))
  .map(([num, den]) => exact(num, den));
const angles = fc.oneof(fc.constantFrom(0, 90, 180, 270), fc.integer({ min: -360, max: 360 }));

describe('published examples', () => {
  // Off by half the last printed digit at most.
  test.each(published)('%s: %d at the fastener', (_, wanted, given, setting, digit) => {
    const ours = settingForDelivered(exact(wanted), given);
    expect(Math.abs(toNumber(ours ?? ZERO) - setting)).toBeLessThanOrEqual(digit / 2);
    if (ours !== null) expect(deliveredFromSetting(ours, given)).toEqual(exact(wanted));
  });
});

describe('properties', () => {
  test('setting and delivered undo each other exactly, at any angle', () => {
    fc.assert(
      fc.property(positives, positives, positives, angles, (torque, length, extension, angle) => {
        const given = { length, extension, angle };
        const setting = settingForDelivered(torque, given);
        if (setting !== null) expect(deliveredFromSetting(setting, given)).toEqual(torque);
      }),
    );
  });

  test('no extension, or one at a right angle, changes nothing', () => {
    fc.assert(
      fc.property(positives, positives, positives, angles, (torque, length, extension, angle) => {
        expect(settingForDelivered(torque, { length, extension: ZERO, angle })).toEqual(torque);
        expect(settingForDelivered(torque, { length, extension, angle: 90 })).toEqual(torque);
      }),
    );
  });

  test('in line, the setting falls as the extension grows', () => {
    fc.assert(
      fc.property(positives, positives, positives, positives, (torque, length, first, second) => {
        const [near, far] = [first, second].map((extension) =>
          settingForDelivered(torque, { length, extension, angle: 0 }),
        );
        expect(compare(near ?? ZERO, far ?? ZERO)).toBe(compare(second, first));
      }),
    );
  });

  test('only the ratio of the lengths counts: inches and millimetres give the same', () => {
    fc.assert(
      fc.property(positives, positives, positives, (torque, length, extension) => {
        const metric = {
          length: convert(length, 'in', 'mm') ?? ZERO,
          extension: convert(extension, 'in', 'mm') ?? ZERO,
          angle: 0,
        };
        expect(settingForDelivered(torque, metric)).toEqual(
          settingForDelivered(torque, { length, extension, angle: 0 }),
        );
      }),
    );
  });

  test('agrees with floating arithmetic to 1e-9 at every angle', () => {
    fc.assert(
      fc.property(positives, fc.integer({ min: -360, max: 360 }), (torque, angle) => {
        const ours = deliveredFromSetting(torque, lever(16, 2, angle));
        const theirs = (toNumber(torque) * (16 + 2 * Math.cos((angle * Math.PI) / 180))) / 16;
        expect(Math.abs(toNumber(ours ?? ZERO) / theirs - 1)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('angles and refusals', () => {
  // [derived] from the formula; 60° is exact because its cosine rounds to one half.
  test.each<[angle: number, num: number, den: number]>([
    [0, 24, 1],
    [360, 24, 1],
    [60, 21, 1],
    [-60, 21, 1],
    [90, 18, 1],
    [-90, 18, 1],
    [270, 18, 1],
    [180, 12, 1],
  ])('18 set on 18 with 6 at %i° delivers %i/%i', (angle, num, den) => {
    expect(deliveredFromSetting(exact(18), lever(18, 6, angle))).toEqual(exact(num, den));
  });

  test('45° is the cosine rounded to 12 decimals', () => {
    const delivered = deliveredFromSetting(exact(1), lever(1, 1, 45)) ?? ZERO;
    expect(subtract(delivered, exact(1))).toEqual(exact(707_106_781_187n, 1_000_000_000_000n));
  });

  test.each<[name: string, lever: Lever]>([
    ['no length', lever(0, 6)],
    ['a negative length', lever(-12, 20)],
    ['pointing back as far as the handle', lever(12, 12, 180)],
    ['pointing back beyond the handle', lever(12, 13, 180)],
    ['a shortening adapter as long as the wrench', lever(12, -12)],
    ['no angle', lever(12, 6, NaN)],
    ['an endless angle', lever(12, 6, Infinity)],
  ])('refuses %s', (_, given) => {
    expect(deliveredFromSetting(exact(10), given)).toBeNull();
    expect(settingForDelivered(exact(10), given)).toBeNull();
  });

  // [derived] from the second example: a 300 lbf·ft joint is in range of a 250 lbf·ft wrench, judged on the setting.
  test('the setting, not the torque wanted, is what the range of the tool sees', () => {
    const setting = settingForDelivered(exact(300), lever(18, 6)) ?? ZERO;
    expect(compare(setting, exact(250))).toBe(-1);
  });
});
