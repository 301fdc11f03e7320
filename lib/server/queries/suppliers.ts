/** Who sells to the shop, on what terms, and what they ask for what. For leads and owners: there are prices in it. */
import 'server-only';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { CatalogueItem } from '@/lib/domain/shop/item';
import type { ItemRow, OfferRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import type { Shop } from '@/lib/domain/shop/rows';
import type { ItemTermsClaim, OfferClaim } from '@/lib/domain/supply-claims';
import type { Database } from '@/lib/server/database';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadReleased } from '@/lib/server/load/plan';
import { loadShop } from '@/lib/server/load/shop';
import { amount } from '@/lib/domain/base/money';
import { moneyText } from '@/lib/wire/money';
import { boxText, pricesText, readBox } from '@/lib/wire/supply-files';
import type {
  ItemTermsView,
  SoldItem,
  SoldOffer,
  SupplierView,
  SuppliersView,
} from '@/lib/wire/views/suppliers';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

export const suppliersView = async (db: Database): Promise<SuppliersView> => {
  const [shop, plans] = await Promise.all([loadShop(db), loadReleased(db)]);
  const documents = Object.values(plans);
  const offers = liveOffers(shop);
  return {
    suppliers: Object.values(shop.suppliers).map((supplier) =>
      supplierOf(supplier, offers.filter((offer) => offer.supplier === supplier.id).length),
    ),
    items: soldItems(shop, documents, offers),
  };
};

const liveOffers = ({ offers }: Shop): readonly OfferRow[] =>
  Object.values(offers).filter(({ ended }) => !ended);

const counted = (count: number, what: string): string => `${String(count)} ${what}${count === 1 ? '' : 's'}`;

const supplierOf = (row: SupplierRow, offers: number): SupplierView => {
  const { orderDays, takesToday, lead, minimumValue, freight, mail } = row;
  const days = orderDays.map((day) => WEEKDAYS[day - 1] ?? '').join(', ');
  const steps = freight.steps.map(({ from, fee }) => {
    const at =
      from === 0 ? '' : ` from ${freight.by === 'value' ? moneyText(from) : `${String(from / 1000)} kg`}`;
    return `${fee === 0 ? 'free' : moneyText(fee)}${at}`;
  });
  return {
    ...row,
    offers,
    terms: [
      ...(days === '' ? [] : [`orders on ${days}`]),
      ...(takesToday ? ['takes an order on any day'] : []),
      lead === 0 ? 'comes the same day' : `comes after ${counted(lead, 'working day')}`,
      ...(minimumValue === 0 ? [] : [`from ${moneyText(minimumValue)} an order`]),
      `freight ${steps.join(', ')}`,
      ...(mail === null ? [] : [mail]),
    ],
  };
};

const soldItems = (
  shop: Shop,
  documents: readonly PlanDocument[],
  offers: readonly OfferRow[],
): readonly SoldItem[] => {
  const catalogue = catalogueFor(documents, shop.items);
  const of = (key: string): readonly SoldOffer[] =>
    offers
      .filter(({ item }) => item === key)
      .map((offer) => offerOf(offer, shop, catalogue[key]?.unit ?? 'pc'))
      .sort((a, b) => (a.supplierName < b.supplierName ? -1 : a.supplierName > b.supplierName ? 1 : 0));
  const items = Object.values(catalogue).map((item): SoldItem => {
    const row = shop.items[item.key];
    const isOwn = row?.own !== undefined && row.own !== null && !isPlanned(documents, item.key);
    return {
      key: item.key,
      name: item.name,
      unit: item.unit,
      kind: isOwn ? 'own' : 'planned',
      kept: keptWords(row),
      terms: termsOf(row, item, documents),
      offers: of(item.key),
    };
  });
  const parts = new Map(documents.flatMap(({ parts: named = {} }) => Object.entries(named)));
  const bought = [...parts].flatMap(([key, { name }]): readonly SoldItem[] => {
    const own = of(key);
    return own.length === 0
      ? []
      : [{ key, name, unit: 'pc', kind: 'part', kept: [], terms: NO_TERMS, offers: own }];
  });
  return [...items, ...bought].sort((a, b) => a.name.localeCompare(b.name, 'en'));
};

const isPlanned = (documents: readonly PlanDocument[], key: string): boolean =>
  documents.some(({ items }) => items?.[key] !== undefined);

const offerOf = (offer: OfferRow, { suppliers }: Shop, unit: string): SoldOffer => {
  const { id, supplier, packSize, steps, weight, number, deposit = 0 } = offer;
  const says = steps.map(({ fromPacks, price }) =>
    fromPacks === 1 ? moneyText(price) : `from ${String(fromPacks)} ${moneyText(price)}`,
  );
  return {
    id,
    supplier,
    supplierName: suppliers[supplier]?.name ?? supplier,
    pack: unit === 'pc' ? packSize : `${packSize} ${unit}`,
    says: `${says.join(', ')}${deposit === 0 ? '' : `, and ${moneyText(deposit)} deposit`}`,
    prices: pricesText(steps),
    weight,
    number: number ?? '',
    deposit: deposit === 0 ? '' : amount(deposit),
  };
};

const NO_TERMS: ItemTermsView = {
  minimum: '',
  attrition: '',
  shelfMonths: '',
  openedDays: '',
  comesWith: '',
  isPart: '',
  reuse: 'always',
  trace: 'bulk',
};

const orEmpty = (text: string): string => (text === '0' ? '' : text);

const termsOf = (
  row: ItemRow | undefined,
  { trace, key }: CatalogueItem,
  documents: readonly PlanDocument[],
): ItemTermsView => {
  const planned = documents.find(({ items }) => items?.[key] !== undefined)?.items?.[key];
  const reuse = planned === undefined ? (row?.own?.reuse ?? 'always') : (planned.reuse ?? 'always');
  if (row === undefined) return { ...NO_TERMS, reuse, trace };
  return {
    minimum: orEmpty(row.minimum),
    attrition: orEmpty(row.attrition),
    shelfMonths: row.shelf?.months?.toString() ?? '',
    openedDays: row.shelf?.openedDays?.toString() ?? '',
    comesWith: boxText(row.comesWith),
    isPart: row.isPart ?? '',
    reuse,
    trace,
  };
};

const keptWords = (row: ItemRow | undefined): readonly string[] => {
  if (row === undefined) return [];
  const { minimum, attrition, shelf, comesWith, isPart } = row;
  const { months, openedDays } = shelf ?? { months: null, openedDays: null };
  const box = boxText(comesWith);
  return [
    ...(minimum === '0' ? [] : [`never fewer than ${minimum}`]),
    ...(months === null ? [] : [`keeps ${counted(months, 'month')}`]),
    ...(openedDays === null ? [] : [`opened ${counted(openedDays, 'day')}`]),
    ...(box === '' ? [] : [`with ${box} in its box`]),
    ...(attrition === '0' ? [] : [`${attrition} % gets lost`]),
    ...(isPart === null ? [] : [`is ${isPart}`]),
  ];
};

// ---- files ----

/** Every offer that stands, as it would be read in. */
export const offerClaims = async (db: Database): Promise<readonly OfferClaim[]> =>
  liveOffers(await loadShop(db)).map(({ supplier, item, packSize, steps, weight, number, deposit }) => ({
    supplier,
    item,
    pack: packSize,
    prices: steps,
    weight,
    ...(number === null ? {} : { number }),
    ...(deposit === undefined ? {} : { deposit }),
  }));

/** Every item of the catalogue with its terms, as it would be read in. */
export const itemClaims = async (db: Database): Promise<readonly ItemTermsClaim[]> => {
  const { items } = await suppliersView(db);
  return items.flatMap(({ key, name, unit, kind, terms }): readonly ItemTermsClaim[] => {
    if (kind === 'part') return [];
    const { minimum, attrition, shelfMonths, openedDays, isPart, reuse, trace } = terms;
    const box = readBox(terms.comesWith);
    return [
      {
        item: key,
        name,
        unit,
        reuse,
        trace,
        ...(shelfMonths === '' ? {} : { shelfMonths: Number(shelfMonths) }),
        ...(openedDays === '' ? {} : { openedDays: Number(openedDays) }),
        ...(box === null ? {} : { comesWith: box }),
        ...(minimum === '' ? {} : { minimum }),
        ...(attrition === '' ? {} : { attrition }),
        ...(isPart === '' ? {} : { isPart }),
      },
    ];
  });
};
