/** What goes into the joint: what is in, what must be new, and what may stand in for it. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { asideFor, lotRefusals, ruleText } from '@/lib/domain/car/hardware';
import { lotFactsOf } from '@/lib/domain/decide/case';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { HardwareLine } from '@/lib/domain/plan/compiled';
import { isLeftFor } from '@/lib/domain/shop/lot-trace';
import type { Lot } from '@/lib/domain/shop/rows';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { HardwareView } from '@/lib/wire/views/sign-off';
import type { Said } from './joint-view';

export const hardwareViews = (at: JointCase, spoken: Said['spoken']): readonly HardwareView[] =>
  at.joint.hardware.map((line) => ({
    item: line.item,
    name: nameOf(at, line.item),
    quantity: line.quantity,
    perFastener: line.per === 'fastener',
    rule: ruleText(line.reuse),
    isOnce: line.reuse.rule === 'once-final' || line.reuse.rule === 'once-fitted',
    isTracedByLot: at.plan.document.items?.[line.item]?.trace === 'lot',
    places: places(at, line),
    lots: lotsOf(at, line.item, spoken),
    substitutes: substitutes(at, line.item, spoken),
  }));

const nameOf = ({ plan }: JointCase, item: Key): string => plan.document.items?.[item]?.name ?? item;

const places = ({ joint, row }: JointCase, line: HardwareLine): HardwareView['places'] =>
  (line.per === 'joint' ? [null] : [...joint.order].sort((a, b) => a - b)).map((fastener) => {
    const piece = row.fasteners[fastener === null ? 'joint' : String(fastener)]?.[line.item];
    const state =
      piece === undefined ? 'empty' : piece.spent ? 'spent' : piece.loose === true ? 'loose' : 'in';
    return { fastener, state, lot: piece?.lot ?? null };
  });

/** What came off its own donor first; off another car's it is none of this one's, until it is shared. */
const lotsOf = (at: JointCase, item: Key, spoken: Said['spoken']): HardwareView['lots'] =>
  Object.values(at.facts.lots)
    .filter((lot) => lot.item === item && (asideFor(lot) ?? at.car.id) === at.car.id)
    .map((lot) => {
      const [refusal] = lotRefusals(item, lot.id, lotFactsOf(at));
      return {
        id: lot.id,
        says: `${lot.id}${originWords(at, lot)}`,
        isOwn: asideFor(lot) !== null && isLeftFor(at.plan, at.car, lot, at.facts),
        whyNot: refusal === undefined ? null : spoken(refusalLine(at.car.id, refusal, at.plan).says),
      };
    })
    .toSorted((a, b) => Number(b.isOwn) - Number(a.isOwn));

const originWords = ({ car }: JointCase, { donor }: Lot): string =>
  donor === undefined ? '' : donor.car === car.id ? ', off its donor' : `, off the donor of ${donor.car}`;

const substitutes = (at: JointCase, item: Key, spoken: Said['spoken']): HardwareView['substitutes'] =>
  Object.entries(at.plan.document.items?.[item]?.substitutes ?? {})
    .filter(
      ([, { onlyIn, notIn }]) =>
        (onlyIn?.includes(at.joint.key) ?? true) && !(notIn?.includes(at.joint.key) ?? false),
    )
    .map(([other, { condition, asksLead }]) => ({
      item: other,
      name: nameOf(at, other),
      condition: condition ?? null,
      asksLead: asksLead ?? false,
      lots: lotsOf(at, other, spoken),
    }));
