/** Writes this release's golden log: `npx tsx tests/support/write-golden.ts > tests/domain/golden/<version>.json`, once. */
import { toRows } from '@/lib/domain/car/codec';
import { goldenStory } from './golden-story';

const { events, world } = goldenStory();
const rows = Object.values(world.cars).flatMap(toRows);
console.log(JSON.stringify({ events, shop: world.shop, rows }));
