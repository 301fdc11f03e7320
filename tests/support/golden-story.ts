/** One small shop's history in which every kind of event happens. Written down once for each release; all invented. */
import type { Event } from '@/lib/domain/events';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { World } from '@/lib/domain/world';
import { plan, shopWith } from './shop';
import type { Told } from './shop';

const document: PlanDocument = plan({
  options: { heater: { name: 'Heater', choices: ['fitted', 'none'] } },
  conditions: { weight: 'weight on wheels', bled: 'no air in the brakes' },
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: {
    'AX-010': {
      name: 'Axle on',
      stage: 'AX',
      wait: '2 h',
      body: [
        'fit P-1',
        'snug J-1',
        'final J-2',
        'final J-3',
        'check K-1',
        'check K-2',
        'place G-1',
        'photo axle',
      ],
    },
    'AX-020': { name: 'Bleed', stage: 'AX', redo: true, needs: ['AX-010'], body: ['set bled'] },
    'AX-030': { name: 'Heater in', stage: 'AX', when: 'heater=fitted', body: [] },
    'WH-010': {
      name: 'Down',
      stage: 'WH',
      repeatable: true,
      needs: ['AX-010', 'wait AX-010'],
      body: ['out G-1', 'set weight', 'final J-1'],
    },
    'WH-020': {
      name: 'Up again',
      stage: 'WH',
      needs: ['WH-010'],
      body: ['clear weight'],
      pieces: { BAR: { prop: '2 × 300 mm' } },
    },
  },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 1,
      method: 'click',
      torque: '60 ± 4 N·m',
      source: 'invented',
      finalNeeds: ['+weight'],
      due: 'WH',
    },
    'J-2': {
      name: 'U-bolts',
      fasteners: 4,
      pattern: 'cross',
      method: 'dial',
      torque: '38 ± 2 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      hardware: { NUT: 4 },
      disturbs: ['J-3'],
      clears: ['bled'],
      due: 'WH',
    },
    'J-3': {
      name: 'Bracket',
      fasteners: 1,
      method: 'click',
      torque: '20 ± 2 N·m',
      source: 'invented',
      due: 'WH',
    },
  },
  checks: {
    'K-2': { name: 'Nothing left inside', kind: 'visual' },
    'K-1': { name: 'Float', kind: 'measured', values: { float: '0.05 to 0.20 mm' }, about: 'P-1' },
  },
  stopgaps: { 'G-1': { name: 'wraps', quantity: 2, outBy: 'WH' } },
  parts: { 'P-1': { name: 'Axle', origin: 'donor', outside: '3 d' } },
  items: {
    NUT: { name: 'lock nut', reuse: 'once final', trace: 'lot' },
    BOLT: { name: 'arm bolt', trace: 'lot' },
    BAR: { name: 'bar', unit: 'm', cut: { lengths: ['1 m'], kerf: '3 mm', ends: '10 mm', keep: '300 mm' } },
  },
});

/** A day of ups and downs; each line is somebody's act. */
const DAY: readonly (readonly [person: string, told: Told] | string)[] = [
  ['leo', { type: 'add-adapter', adapter: 'A-1', name: "crow's-foot", extension: '50', unit: 'mm' }],
  ['leo', { type: 'qualify-person', person: 'tom', qualification: { key: 'brakes', until: '2026-06-30' } }],
  ['leo', { type: 'end-qualification', person: 'tom', key: 'brakes', last: '2026-05-31' }],
  ['leo', { type: 'add-person', person: 'guest', name: 'Guest', roles: ['technician'] }],
  ['leo', { type: 'rename-person', person: 'guest', name: 'Guest Hand' }],
  ['ada', { type: 'change-roles', person: 'guest', roles: ['technician', 'lead'] }],
  ['leo', { type: 'remove-person', person: 'guest' }],
  ['leo', { type: 'release-plan', plan: 'Corbel 54 r1' }],
  ['leo', { type: 'receive-lot', lot: 'L-1', item: 'NUT', quantity: 20 }],
  ['tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' }],
  ['leo', { type: 'clear-lot', lot: 'L-1', reason: 'tested' }],
  ['leo', { type: 'receive-stock', goods: [{ item: 'WASHER', quantity: '100' }] }],
  ['tom', { type: 'put-away', places: [{ item: 'WASHER', bin: '09C' }] }],
  ['tom', { type: 'draw-stock', item: 'WASHER', quantity: '2', reason: 'lost' }],
  ['tom', { type: 'put-back', item: 'WASHER', quantity: '1' }],
  ['tom', { type: 'count-stock', counts: [{ item: 'WASHER', counted: '98' }] }],
  ['leo', { type: 'set-item', item: 'NUT', minimum: '20' }],
  ['leo', { type: 'import-items', items: [{ item: 'CLIP', name: 'clip', attrition: '5' }] }],
  ['leo', { type: 'set-supplier', supplier: 'H', name: 'Thornby Fixings', orderDays: [3], lead: 2 }],
  [
    'leo',
    { type: 'set-offer', supplier: 'H', item: 'NUT', pack: '25', prices: [{ fromPacks: 1, price: 260 }] },
  ],
  [
    'ada',
    {
      type: 'import-offers',
      offers: [{ supplier: 'H', item: 'NUT', pack: '50', prices: [{ fromPacks: 1, price: 420 }] }],
    },
  ],
  ['ada', { type: 'end-offer', offer: 'H/NUT/25' }],
  ['ada', { type: 'pin-line', item: 'NUT', supplier: 'H' }],
  ['ada', { type: 'unpin-line', item: 'NUT' }],
  [
    'ada',
    {
      type: 'approve-order',
      first: '1',
      orders: [
        {
          supplier: 'H',
          ordered: '2026-03-04',
          freight: 0,
          lines: [{ offer: 'H/NUT/50', packs: 2, price: 420, cars: [{ car: 'C1', quantity: '4' }] }],
        },
      ],
    },
  ],
  ['leo', { type: 'promise-order', order: '1', due: '2026-03-09' }],
  [
    'leo',
    { type: 'receive-order', order: '1', note: '88210', lines: [{ line: 0, good: '60', damaged: '1' }] },
  ],
  ['leo', { type: 'end-order-line', order: '1', line: 0, why: 'credited' }],
  ['leo', { type: 'credit-order', order: '1', money: 336, why: 'forty did not come' }],
  ['ada', { type: 'set-rate', from: '2026-03-02', money: 3800 }],
  ['leo', { type: 'quote-outside', plan: 'Corbel 54', key: 'P-1', money: 6500 }],
  ['leo', { type: 'assign', job: 'stage:AX', add: ['tom'] }],
  ['leo', { type: 'choose-option', option: 'heater', choice: 'none' }],
  [
    'tom',
    {
      type: 'keep-donor-hardware',
      donorOf: 'C1',
      lines: [{ item: 'BOLT', good: '4', scrapped: '2', lot: 'L-8' }],
    },
  ],
  ['leo', { type: 'share-donor-lot', lot: 'L-8' }],
  ['tom', { type: 'count-remnants', item: 'NUT', lengths: ['640 mm', '1.2 m'] }],
  [
    'tom',
    {
      type: 'saw-bars',
      item: 'BAR',
      bars: [
        { from: 'new', length: '1 m', pieces: [{ car: 'C1', piece: 'prop', length: '300 mm', count: 2 }] },
      ],
    },
  ],
  [
    'tom',
    { type: 'recut-pieces', item: 'BAR', pieces: [{ car: 'C1', piece: 'prop', length: '300 mm', count: 1 }] },
  ],
  ['leo', { type: 'open-trip', trip: '1', supplier: 'H', goes: '2026-03-02', due: '2026-03-09' }],
  ['leo', { type: 'promise-trip', trip: '1', due: '2026-03-04' }],
  ['leo', { type: 'record-donor', year: '1967', model: 'Dunmore 1800', number: 'DS-04417' }],
  ['tom', { type: 'grade-parts', parts: [{ part: 'P-1', grade: 'refurbish', place: '2B' }] }],
  ['tom', { type: 'send-parts', trip: '1', parts: [{ part: 'P-1', work: 'straighten' }] }],
  ['tess', { type: 'return-parts', trip: '1', parts: [{ part: 'P-1', how: 'done' }] }],
  ['leo', { type: 'bill-trip', trip: '1', lines: [{ car: 'C1', part: 'P-1', money: 4500 }], freight: 900 }],
  ['tom', { type: 'receive-part', part: 'P-1', looked: 'straight to 0.3 mm' }],
  ['tess', { type: 'pick-kit', operation: 'AX-010', lines: [{ item: 'NUT', lot: 'L-1', quantity: '6' }] }],
  ['tess', { type: 'empty-kit', operation: 'AX-010', lines: [{ item: 'NUT', quantity: '1' }] }],
  ['tess', { type: 'report-kit-line', operation: 'AX-010', item: 'NUT', what: 'damaged', quantity: '1' }],
  ['tom', { type: 'start-operation', operation: 'AX-010' }],
  ['tess', { type: 'join-operation', operation: 'AX-010' }],
  ['tess', { type: 'leave-operation', operation: 'AX-010' }],
  ['tom', { type: 'pause-operation', operation: 'AX-010', leftAs: 'axle on the jack' }],
  ['tom', { type: 'resume-operation', operation: 'AX-010' }],
  ['tom', { type: 'fit-part', part: 'P-1' }],
  ['tom', { type: 'strike-signature', signature: 'last', reason: 'mis-tap' }],
  ['tom', { type: 'fit-part', part: 'P-1' }],
  ['tom', { type: 'snug-joint', joint: 'J-1' }],
  [
    'tom',
    { type: 'report-over-torque', joint: 'J-2', fastener: 3, reading: '44', unit: 'N·m', tool: 'T-05' },
  ],
  ['tom', { type: 'open-joint', joint: 'J-2', fasteners: [3] }],
  [
    'tom',
    {
      type: 'final-joint',
      joint: 'J-2',
      tool: 'T-05',
      passes: [[1, 3, 2, 4]],
      readings: ['38', '38', '38', '38'],
    },
  ],
  ['tom', { type: 'strike-signature', signature: 'last', reason: 'wrong car' }],
  [
    'tom',
    {
      type: 'final-joint',
      joint: 'J-2',
      tool: 'T-05',
      passes: [[1, 3, 2, 4]],
      readings: ['38', '38', '38', '38'],
    },
  ],
  ['leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'renewed' }],
  ['leo', { type: 'close-finding', finding: 'F-1' }],
  ['tom', { type: 'begin-check', check: 'K-1' }],
  ['tom', { type: 'fail-check', check: 'K-1', values: { float: '0.4' }, reason: 'too loose' }],
  ['leo', { type: 'decide-finding', finding: 'F-2', disposition: 'use-as-is', reason: 'shimmed' }],
  ['ada', { type: 'decide-change', change: 'D-1', approve: false, reason: 'no' }],
  ['leo', { type: 'decide-finding', finding: 'F-2', disposition: 'replace', reason: 'worn' }],
  ['tom', { type: 'receive-part', part: 'P-1' }],
  ['tom', { type: 'fit-part', part: 'P-1' }],
  ['tom', { type: 'pass-check', check: 'K-1', values: { float: '0.4' } }],
  ['leo', { type: 'decide-finding', finding: 'F-2', disposition: 'use-as-is', reason: 'shimmed' }],
  ['ada', { type: 'decide-change', change: 'D-2', approve: true }],
  ['tom', { type: 'final-joint', joint: 'J-3', tool: 'T-02', setting: '20' }],
  ['tom', { type: 'pass-check', check: 'K-2' }],
  ['tom', { type: 'add-photo', of: 'AX-010', slot: 'axle', hash: 'f00d' }],
  ['tom', { type: 'add-note', of: 'AX-010', text: 'hole 2 mm off, shimmed' }],
  ['tom', { type: 'finish-operation', operation: 'AX-010' }],
  ['tom', { type: 'strike-signature', signature: 'last', reason: 'too early' }],
  ['tom', { type: 'resume-operation', operation: 'AX-010' }],
  ['tom', { type: 'finish-operation', operation: 'AX-010' }],
  ['vera', { type: 'verify-joint', joint: 'J-2', method: 'seen' }],
  ['tom', { type: 'start-operation', operation: 'AX-020' }],
  ['tom', { type: 'finish-operation', operation: 'AX-020' }],
  ['leo', { type: 'place-hold', scope: 'gate', reason: 'papers' }],
  ['leo', { type: 'release-hold', hold: 'H-1' }],
  ['leo', { type: 'advance-car', to: 'WH' }],
  ['leo', { type: 'send-back', to: 'AX', reason: 'look again' }],
  ['leo', { type: 'advance-car', to: 'WH' }],
  ['leo', { type: 'ask-change', wait: 'AX-010', reason: 'warm day' }],
  ['ada', { type: 'decide-change', change: 'D-3', approve: true }],
  ['tom', { type: 'start-operation', operation: 'WH-010' }],
  ['tom', { type: 'remove-stopgap', stopgap: 'G-1', quantity: 2 }],
  ['tom', { type: 'strike-signature', signature: 'last', reason: 'miscounted' }],
  ['tom', { type: 'remove-stopgap', stopgap: 'G-1' }],
  ['tom', { type: 'set-condition', condition: 'weight', reason: 'it stands' }],
  ['tom', { type: 'final-joint', joint: 'J-1', tool: 'T-02', setting: '60' }],
  ['tom', { type: 'finish-operation', operation: 'WH-010' }],
  ['tom', { type: 'start-operation', operation: 'WH-020' }],
  ['tom', { type: 'finish-operation', operation: 'WH-020' }],
  ['ada', { type: 'deliver-car' }],
  ['tess', { type: 'take-part', part: 'P-1', reason: 'for car two', takenFor: 'C2' }],
  ['tess', { type: 'open-joint', joint: 'J-2', fasteners: [1] }],
  ['tom', { type: 'recheck-joint', joint: 'J-3', tool: 'T-05' }],
  ['leo', { type: 'suspect-tool', tool: 'T-02', reason: 'dropped' }],
  '1 d',
  [
    'leo',
    {
      type: 'record-calibration',
      tool: 'T-02',
      on: '2026-03-03',
      due: '2027-03-03',
      asFound: [{ set: '60', delivered: '64.8' }],
    },
  ],
];

/** The history: every event in order, and the world after it. */
export const goldenStory = (): { readonly events: readonly Event[]; readonly world: World } => {
  const shop = shopWith(document);
  for (const line of DAY) {
    if (typeof line === 'string') {
      shop.later(line);
      continue;
    }
    const [person, told] = line;
    const isLast = told.type === 'strike-signature' && told.signature === 'last';
    shop.does(person, isLast ? { ...told, signature: shop.last } : told);
  }
  return { events: shop.heard, world: shop.world };
};
