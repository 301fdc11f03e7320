/** What goes into the joint: what is in, what must be new, and what may stand in for it. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { WHOLE, ruleText } from '@/lib/domain/car/hardware';
import { runningWork } from '@/lib/domain/car/work';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { HardwareLine } from '@/lib/domain/plan/compiled';
import { inBox } from '@/lib/domain/shop/kit';
import { lotsAtHand } from '@/lib/domain/shop/lots-to-take';
import { freshPieces, proposedHardware } from '@/lib/domain/shop/proposed-hardware';
import { binOf } from '@/lib/domain/shop/rows';
import type { HardwareView } from '@/lib/wire/views/sign-off';
import type { Said } from './joint-view';
import { NO_STORES, lotChoices } from './lot-choices';
import type { Stores } from './lot-choices';

export const hardwareViews = (
  at: JointCase,
  spoken: Said['spoken'],
  stores: Stores = NO_STORES,
): readonly HardwareView[] => {
  const work = runningWork(at.car, at.joint, 'snug');
  const box = work === null ? [] : inBox(at.car, work.operation);
  const proposed = proposedHardware(at.plan, at.joint, at.row, (item) =>
    lotsAtHand(box, stores.shelf, item, at.car.id),
  );
  const fresh = freshPieces(at.plan, at.joint, at.row);
  const lotsOf = (item: Key): HardwareView['lots'] => lotChoices(at, stores, box, item, spoken);
  return at.joint.hardware.map((line) => ({
    item: line.item,
    name: nameOf(at, line.item),
    quantity: line.quantity,
    perFastener: line.per === 'fastener',
    rule: ruleText(line.reuse),
    isOnce: line.reuse.rule === 'once-final' || line.reuse.rule === 'once-fitted',
    isTracedByLot: at.plan.document.items?.[line.item]?.trace === 'lot',
    places: places(
      at,
      line,
      fresh.flatMap(({ item, place }) => (item === line.item ? place : [])),
    ),
    bin: binOf({ bins: stores.bins, lots: at.facts.lots }, line.item, null),
    proposed: proposed.filter(({ item }) => item === line.item),
    lots: lotsOf(line.item),
    substitutes: substitutes(at, line.item, lotsOf),
  }));
};

const nameOf = ({ plan }: JointCase, item: Key): string => plan.document.items?.[item]?.name ?? item;

const places = (
  { joint, row }: JointCase,
  line: HardwareLine,
  fresh: readonly string[],
): HardwareView['places'] =>
  (line.per === 'joint' ? [null] : [...joint.order].sort((a, b) => a - b)).map((fastener) => {
    const place = fastener === null ? WHOLE : String(fastener);
    const piece = row.fasteners[place]?.[line.item];
    const state =
      piece === undefined ? 'empty' : piece.spent ? 'spent' : piece.loose === true ? 'loose' : 'in';
    return { fastener, state, lot: piece?.lot ?? null, isNew: fresh.includes(place) };
  });

const substitutes = (
  at: JointCase,
  item: Key,
  lotsOf: (item: Key) => HardwareView['lots'],
): HardwareView['substitutes'] =>
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
      lots: lotsOf(other),
    }));
