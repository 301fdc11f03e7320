/** world + event → world. Total, and in need of no plan: every consequence is an event of its own. */
import { carStarted, evolveCar } from './evolve/car';
import { evolveShop, toolUsed } from './evolve/shop';
import type { Event } from './events';
import { withChange } from './shop/stock';
import { stockHalf } from './stock-half';
import type { World } from './world';

/** Folds one event; the stream's version rises by one with it. */
export const evolve = (world: World, event: Event): World => {
  const folded = folding(world, event);
  // A car's event that happened to nothing changes no stock either.
  const changes = folded === world ? [] : stockHalf(event);
  return changes.length === 0 ? folded : { ...folded, stock: changes.reduce(withChange, folded.stock) };
};

const folding = (world: World, event: Event): World => {
  if (event.stream === 'shop') return { ...world, shop: evolveShop(world.shop, event) };
  const before = world.cars[event.car];
  // A car's first event makes it; anything before that has nothing to happen to.
  const after =
    event.type === 'car-started'
      ? carStarted(event)
      : before === undefined
        ? undefined
        : evolveCar(before, event);
  if (after === undefined) return world;
  const shop = event.type === 'joint-marked' ? toolUsed(world.shop, event.toolUse) : world.shop;
  return { ...world, shop, cars: { ...world.cars, [event.car]: after } };
};

export const evolveAll = (world: World, events: readonly Event[]): World => events.reduce(evolve, world);
