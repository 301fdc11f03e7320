'use client';

import { useEffect } from 'react';
import { line } from '@/lib/offline/live-line';

interface FollowCarProps {
  readonly car: string;
  /** Of the car as this page shows it. */
  readonly version: number;
  /** Of the shop's books (people, tools, lots), where the page shows something that rests on them. */
  readonly shop?: number;
}

/** For a page about one car: when a newer version of it is heard of, the page is asked for again. Shows nothing. */
export function FollowCar({ car, version, shop }: FollowCarProps) {
  useEffect(
    () => line.follow({ versions: { [`car:${car}`]: version, ...(shop === undefined ? {} : { shop }) } }),
    [car, version, shop],
  );
  return null;
}

/** For a page about people, tools or plans: follows the shop's books alone. */
export function FollowShop({ version }: { readonly version: number }) {
  useEffect(() => line.follow({ versions: { shop: version } }), [version]);
  return null;
}

/**
 * For a page about all cars (my work, the verify queue): any news has it asked for again. `clock` is `floorClock` of
 * lib/server/queries/clock.ts, read before what the page shows, so that it is never older than it says.
 */
export function FollowFloor({ clock }: { readonly clock: number }) {
  useEffect(() => line.follow({ clock }), [clock]);
  return null;
}
