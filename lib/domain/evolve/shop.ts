/** Events of the shop's own stream: people, tools, lots. */
import type { ShopEvent } from '@/lib/domain/events';
import { evolvePurchase } from './purchases';
import { barsSawn, piecesRecut } from './sawing';
import { evolveSupply } from './supply';
import { evolveTrip } from './trips';
import { endedAfter } from '@/lib/domain/shop/rows';
import type { Lot, Person, Shop } from '@/lib/domain/shop/rows';
import type { Tool } from '@/lib/domain/torque/tool';

export const evolveShop = (shop: Shop, event: ShopEvent): Shop => ({
  ...changed(shop, event),
  version: shop.version + 1,
});

const changed = (shop: Shop, event: ShopEvent): Shop => {
  switch (event.type) {
    case 'person-added':
      return { ...shop, people: { ...shop.people, [event.person.id]: event.person } };
    case 'person-qualified':
      return onPerson(shop, event.person, (person) => ({
        ...person,
        qualifications: [...person.qualifications, event.qualification],
      }));
    case 'qualification-ended':
      return onPerson(shop, event.person, (person) => ({
        ...person,
        qualifications: endedAfter(person.qualifications, event.key, event.last),
      }));
    case 'person-renamed':
      return onPerson(shop, event.person, (person) => ({
        ...person,
        name: event.name,
        formerly: [...(person.formerly ?? []), { name: event.was, until: event.meta.at }],
      }));
    case 'roles-changed':
      return onPerson(shop, event.person, (person) => ({ ...person, roles: event.roles }));
    case 'person-removed':
      return onPerson(shop, event.person, (person) => ({ ...person, left: true }));
    case 'tool-added':
      return { ...shop, tools: { ...shop.tools, [event.tool.id]: event.tool } };
    case 'adapter-added':
      return { ...shop, adapters: { ...shop.adapters, [event.adapter.id]: event.adapter } };
    case 'tool-calibrated':
      return onTool(shop, event.tool, (tool) => ({
        ...tool,
        calibrations: [...tool.calibrations, event.calibration],
        ...(tool.cycles === undefined ? {} : { cycles: { ...tool.cycles, used: 0 } }),
      }));
    case 'tool-suspected':
      return onTool(shop, event.tool, (tool) => ({ ...tool, suspect: [...tool.suspect, event.interval] }));
    case 'tool-tested':
      return onTool(shop, event.tool, (tool) => ({
        ...tool,
        suspect: tool.suspect.map((interval) =>
          interval.until === null
            ? { ...interval, until: event.until, low: event.low, high: event.high }
            : interval,
        ),
      }));
    case 'plan-released': {
      const { model, revision, meta } = event;
      return {
        ...shop,
        plans: { ...shop.plans, [event.plan]: { model, revision, by: meta.by, at: meta.at } },
      };
    }
    case 'lot-received':
      return { ...shop, lots: { ...shop.lots, [event.lot.id]: event.lot } };
    case 'donor-hardware-kept':
      // What was good is received by its lots.
      return shop;
    case 'donor-lot-shared':
      return onLot(shop, event.lot, (lot) =>
        lot.donor === undefined ? lot : { ...lot, donor: { ...lot.donor, isShared: true } },
      );
    case 'lot-quarantined':
      return onLot(shop, event.lot, (lot) => ({ ...lot, quarantined: event.reason }));
    case 'lot-cleared':
      return onLot(shop, event.lot, (lot) => ({ ...lot, quarantined: null }));
    case 'stock-put-away':
      return event.lot === null
        ? { ...shop, bins: { ...shop.bins, [event.item]: { bin: event.bin } } }
        : onLot(shop, event.lot, (lot) => ({ ...lot, bin: event.bin }));
    case 'remnants-counted': {
      const { item, lengths, meta } = event;
      return {
        ...shop,
        remnants: { ...shop.remnants, [item]: { item, lengths, by: meta.by, at: meta.at } },
      };
    }
    case 'bars-sawn':
      return barsSawn(shop, event);
    case 'pieces-recut':
      return piecesRecut(shop, event);
    case 'stock-received':
    case 'stock-put-back':
    case 'stock-drawn':
    case 'stock-counted':
      // Their quantities are the world's stock, folded by `stock-half.ts`.
      return shop;
    case 'order-approved':
    case 'order-received':
    case 'order-promised':
    case 'order-line-ended':
    case 'order-credited':
      return evolvePurchase(shop, event);
    case 'trip-opened':
    case 'trip-promised':
    case 'trip-billed':
      return evolveTrip(shop, event);
    case 'rate-set':
      return { ...shop, rates: { ...shop.rates, [event.rate.id]: event.rate } };
    default:
      return evolveSupply(shop, event);
  }
};

/** The shop's half of a sign-off: the tool's cycles since its calibration add up. */
export const toolUsed = (shop: Shop, use: { readonly tool: string; readonly cycles: number } | null): Shop =>
  use === null
    ? shop
    : onTool(shop, use.tool, (tool) =>
        tool.cycles === undefined
          ? tool
          : { ...tool, cycles: { ...tool.cycles, used: tool.cycles.used + use.cycles } },
      );

const onPerson = (shop: Shop, id: string, change: (person: Person) => Person): Shop => {
  const person = shop.people[id];
  return person === undefined ? shop : { ...shop, people: { ...shop.people, [id]: change(person) } };
};

const onTool = (shop: Shop, id: string, change: (tool: Tool) => Tool): Shop => {
  const tool = shop.tools[id];
  return tool === undefined ? shop : { ...shop, tools: { ...shop.tools, [id]: change(tool) } };
};

const onLot = (shop: Shop, id: string, change: (lot: Lot) => Lot): Shop => {
  const lot = shop.lots[id];
  return lot === undefined ? shop : { ...shop, lots: { ...shop.lots, [id]: change(lot) } };
};
