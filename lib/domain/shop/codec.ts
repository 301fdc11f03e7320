/** Shop ↔ rows. A tool's suspicions are rows of their own; a plan's document is kept elsewhere, under its hash. */
import type { SuspectInterval, Tool } from '@/lib/domain/torque/tool';
import type { Shop } from './rows';

export const SHOP_TABLES = [
  'person',
  'tool',
  'tool_suspect',
  'adapter',
  'lot',
  'bin',
  'plan_release',
  'item',
  'supplier',
  'offer',
  'line_pin',
  'purchase_order',
  'trip',
  'remnant',
  'sawn_piece',
  'hour_rate',
  'outside_quote',
] as const;
export type ShopTable = (typeof SHOP_TABLES)[number];

/** `nr` tells a tool's suspicions apart; 0 everywhere else. */
export interface ShopRow {
  readonly table: ShopTable;
  readonly key: string;
  readonly nr: number;
  readonly row: unknown;
}

/** Every row of the shop. */
export const toShopRows = (shop: Shop): readonly ShopRow[] => shopDelta(null, shop);

/** The rows that differ: a row is the same only if it is the same object. Nothing of the shop is ever removed. */
export const shopDelta = (before: Shop | null, after: Shop): readonly ShopRow[] => [
  ...differing('person', before?.people, after.people),
  ...differing('tool', before?.tools, after.tools).map((row) => ({ ...row, row: withoutSuspects(row.row) })),
  ...Object.values(after.tools).flatMap((tool) => suspects(before?.tools[tool.id], tool)),
  ...differing('adapter', before?.adapters, after.adapters),
  ...differing('lot', before?.lots, after.lots),
  ...differing('bin', before?.bins, after.bins),
  ...differing('plan_release', before?.plans, after.plans),
  ...differing('item', before?.items, after.items),
  ...differing('supplier', before?.suppliers, after.suppliers),
  ...differing('offer', before?.offers, after.offers),
  ...differing('line_pin', before?.pins, after.pins),
  ...differing('purchase_order', before?.orders, after.orders),
  ...differing('trip', before?.trips, after.trips),
  ...differing('remnant', before?.remnants, after.remnants),
  ...differing('sawn_piece', before?.sawn, after.sawn),
  ...differing('hour_rate', before?.rates, after.rates),
  ...differing('outside_quote', before?.quotes, after.quotes),
];

interface Changed<Row> extends ShopRow {
  readonly row: Row;
}

const differing = <Row>(
  table: ShopTable,
  before: Readonly<Record<string, Row>> | undefined,
  after: Readonly<Record<string, Row>>,
): readonly Changed<Row>[] =>
  before === after
    ? []
    : Object.entries(after).flatMap(([key, row]) =>
        before?.[key] === row ? [] : [{ table, key, nr: 0, row }],
      );

const withoutSuspects = ({ suspect: _, ...rest }: Tool): Omit<Tool, 'suspect'> => rest;

const suspects = (before: Tool | undefined, after: Tool): readonly ShopRow[] =>
  before?.suspect === after.suspect
    ? []
    : after.suspect.flatMap((row, nr) =>
        before?.suspect[nr] === row ? [] : [{ table: 'tool_suspect' as const, key: after.id, nr, row }],
      );

/** The shop that these rows are of. Inverse of `toShopRows`; the version is the stream's. */
export const fromShopRows = (version: number, rows: readonly ShopRow[]): Shop => {
  const of = <Row>(table: ShopTable): Readonly<Record<string, Row>> =>
    // Rows come from `toShopRows` through a store that keeps them as they are; a store that doesn't is found by the log.
    Object.fromEntries(rows.filter((each) => each.table === table).map(({ key, row }) => [key, row as Row]));
  const intervals = rows
    .filter(({ table }) => table === 'tool_suspect')
    .sort((a, b) => a.nr - b.nr)
    .map(({ key, row }) => ({ key, interval: row as SuspectInterval }));
  const tools = Object.values(of<Omit<Tool, 'suspect'>>('tool')).map((tool): Tool => ({
    ...tool,
    suspect: intervals.filter(({ key }) => key === tool.id).map(({ interval }) => interval),
  }));
  return {
    version,
    people: of('person'),
    tools: Object.fromEntries(tools.map((tool) => [tool.id, tool])),
    adapters: of('adapter'),
    lots: of('lot'),
    bins: of('bin'),
    plans: of('plan_release'),
    items: of('item'),
    suppliers: of('supplier'),
    offers: of('offer'),
    pins: of('line_pin'),
    orders: of('purchase_order'),
    trips: of('trip'),
    remnants: of('remnant'),
    sawn: of('sawn_piece'),
    rates: of('hour_rate'),
    quotes: of('outside_quote'),
  };
};
