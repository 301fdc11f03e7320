/** Reads the donor of one car: how each part was found, and what that makes to be bought and sent out. */
import 'server-only';
import type { Key } from '@/lib/domain/base/vocabulary';
import { isGivenUp, lastOuting } from '@/lib/domain/car/component-rows';
import { NO_DONOR_FACTS } from '@/lib/domain/car/donor-identity';
import { vinDoubtWords, vinDoubts } from '@/lib/domain/car/vin';
import { planKey } from '@/lib/domain/plan/positions';
import { carNeed } from '@/lib/domain/shop/need';
import type { CarNeed } from '@/lib/domain/shop/need';
import { LEADS } from '@/lib/domain/command-rule';
import { mayGrade, toSend, waitsForLook } from '@/lib/domain/shop/components';
import type { Database } from '@/lib/server/database';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadReleased } from '@/lib/server/load/plan';
import { loadStock } from '@/lib/server/load/stock';
import { anchorOf } from '@/lib/wire/views/said-line';
import type { DonorNeed, DonorPartLine, DonorVehicle, DonorView } from '@/lib/wire/views/donor';
import { weekdayWords } from '@/lib/wire/views/when';
import { readCar } from './car';
import { partKeys, partWords } from './car/matters';
import { photosOf } from './car/photos';
import { see } from './car/seen';
import type { Seen } from './car/seen';
import { donorItems, donorLots } from './donor-hardware';

/** Null where there is no such car. */
export const donorView = async (
  db: Database,
  id: string,
  actor: string,
  now: string,
): Promise<DonorView | null> => {
  const [given, released, stock] = await Promise.all([
    readCar(db, id, actor, now),
    loadReleased(db),
    loadStock(db),
  ]);
  if (given === null) return null;
  const seen = see(given);
  const parts = donorKeys(seen).map((key) => lineOf(seen, key));
  const graded = parts.filter(({ grade }) => grade !== null).length;
  const { car, plan, facts } = seen;
  const catalogue = catalogueFor(Object.values(released), seen.shop.items);
  const need = carNeed(plan, car, facts, catalogue);
  return {
    car: { id: car.id, chassis: car.chassis, colour: car.colour },
    me: { id: actor, isLead: LEADS.some((role) => facts.people[actor]?.roles.includes(role) ?? false) },
    vehicle: vehicleOf(seen),
    hardware: {
      lots: donorLots(seen, stock, catalogue),
      items: donorItems(seen, need, stock, catalogue),
    },
    says:
      parts.length === 0
        ? 'This plan takes nothing off a donor.'
        : `${String(parts.length)} kinds of parts; ${graded === parts.length ? 'all are graded' : `${String(graded)} graded`}.`,
    parts,
    need: needOf(seen, need),
    toSend: toSend(seen.plan, seen.car).map((key) => ({
      key,
      name: nameOf(seen, key),
      days: seen.plan.document.parts?.[key]?.outside ?? '',
    })),
    findings: Object.entries(car.findings).flatMap(([finding, { about, state, text }]) =>
      about.kind === 'part' && state !== 'closed' && donorKeys(seen).includes(planKey(about.key))
        ? [
            {
              id: finding,
              text: `${seen.words.thing(about.key)}: ${text}`,
              href: `/cars/${encodeURIComponent(car.id)}#${anchorOf('finding', finding)}`,
            },
          ]
        : [],
    ),
  };
};

const vehicleOf = ({ car, facts, tag, when }: Seen): DonorVehicle => {
  const { year, model, number, mileage, from, came } = car.donor ?? NO_DONOR_FACTS;
  return {
    told: {
      year: year === null ? '' : String(year),
      model: model ?? '',
      number: number ?? '',
      mileage: mileage ?? '',
      from: from ?? '',
      came: came ?? '',
    },
    whence: [
      ...(mileage === null ? [] : [mileage]),
      ...(from === null ? [] : [`from ${from}`]),
      ...(came === null ? [] : [`came ${weekdayWords(came, facts.day)}`]),
    ].join(', '),
    doubts: number === null ? [] : vinDoubts(number, year).map(vinDoubtWords),
    recorded: car.donor === undefined ? '' : `${tag(car.donor.by, car.donor.at).name}, ${when(car.donor.at)}`,
  };
};

/** Whoever sees that most donors want it buys it for the next one as well. */
const othersWords = ({ car, floor }: Seen, part: Key): string => {
  const graded = floor.flatMap(({ plan, components }) => {
    const grade = components[part]?.grade ?? null;
    return plan === car.plan && grade !== null ? [grade] : [];
  });
  const given = graded.filter(isGivenUp).length;
  return graded.length > 1 && given > 1
    ? `; ${String(given)} of ${String(graded.length)} donors on the floor want one`
    : '';
};

const donorKeys = (seen: Seen): readonly Key[] =>
  partKeys(seen).filter((key) => seen.plan.document.parts?.[key]?.origin === 'donor');

const nameOf = (seen: Seen, key: Key): string => seen.plan.document.parts?.[key]?.name ?? key;

const lineOf = (seen: Seen, key: Key): DonorPartLine => {
  const { car, plan } = seen;
  const entry = plan.document.parts?.[key];
  const row = car.parts[key];
  const state = row?.state ?? 'absent';
  const component = car.components[key];
  const grade = component?.grade ?? null;
  const isByGrade = state === 'present' && grade === 'reuse' && component?.piece === row?.piece;
  const outing = state === 'out' || state === 'back' ? lastOuting(component) : undefined;
  const isWaiting = waitsForLook(plan, car, key);
  const isNew = component !== undefined && component.piece !== (row?.piece ?? 1);
  const from = component?.from ?? null;
  const takenFor = state === 'taken' ? (row?.takenFor ?? null) : null;
  return {
    key,
    name: nameOf(seen, key),
    isCritical: entry?.critical === true,
    lookedAt: entry?.lookedAt ?? '',
    usual: entry?.grade ?? null,
    grade,
    place: component?.place ?? '',
    serial: component?.serial ?? '',
    note: component?.note ?? '',
    stands: [
      ...((state === 'absent' && !isWaiting) || isByGrade
        ? []
        : [
            `${isNew ? 'another one ' : ''}${partWords(seen, key)}${outing === undefined ? '' : ` (trip ${outing.trip})`}`,
          ]),
      ...(takenFor === null ? [] : [`for ${takenFor}`]),
      ...(from === null ? [] : [`off ${from}`]),
    ].join(' '),
    isOpen: mayGrade(car, key),
    waitsForLook: isWaiting,
    photos: photosOf(seen, new Set([key])),
  };
};

/** Parts to be bought because of how this donor is; hardware stands on the page of the demand. */
const needOf = (seen: Seen, { lines }: CarNeed): readonly DonorNeed[] => {
  const { words } = seen;
  return lines
    .filter(({ what, cause }) => what === 'part' && cause.kind === 'graded')
    .map(({ item, at, cause }) => ({
      key: item,
      name: nameOf(seen, item),
      says: `for ${words.thing(at)}${othersWords(seen, item)}`,
      isUnusual: cause.kind === 'graded' && !isGivenUp(cause.usual),
    }))
    .toSorted((a, b) => Number(b.isUnusual) - Number(a.isUnusual));
};
