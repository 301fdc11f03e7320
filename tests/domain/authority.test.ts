import { describe, expect, test } from 'vitest';
import { COMMANDS, mayAct } from '@/lib/domain/authority';
import type { CommandKind, Role } from '@/lib/domain/base/vocabulary';
import type { Claim, ClaimOf, ClaimType } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import type { Facts } from '@/lib/domain/facts';
import { plan, shopWith } from '@/tests/support/shop';

const CAR = { car: 'C1' } as const;
const OP = { ...CAR, operation: 'AX-010' } as const;
const JOINT = { ...CAR, joint: 'J-110' } as const;
const CHECK = { ...CAR, check: 'K-01' } as const;

/** One of each; a command that is missing here does not compile. */
const CLAIMS: { readonly [Type in ClaimType]: ClaimOf<Type> } = {
  'add-person': { type: 'add-person', person: 'new', name: 'New', roles: ['technician'] },
  'qualify-person': { type: 'qualify-person', person: 'tom', qualification: { key: 'brakes' } },
  'end-qualification': { type: 'end-qualification', person: 'tom', key: 'brakes', last: '2026-03-01' },
  'rename-person': { type: 'rename-person', person: 'tess', name: 'Tess Marrow' },
  'change-roles': { type: 'change-roles', person: 'tess', roles: ['lead'] },
  'remove-person': { type: 'remove-person', person: 'tess' },
  'add-tool': {
    type: 'add-tool',
    tool: 'T-99',
    name: 'New',
    kind: 'click',
    low: '5',
    high: '25',
    unit: 'N·m',
  },
  'add-adapter': { type: 'add-adapter', adapter: 'A-1', name: "Crow's-foot", extension: '50', unit: 'mm' },
  'record-calibration': { type: 'record-calibration', tool: 'T-02', on: '2026-03-02', due: '2027-03-02' },
  'suspect-tool': { type: 'suspect-tool', tool: 'T-02', reason: 'dropped' },
  'release-plan': { type: 'release-plan', plan: 'p2' },
  'receive-lot': { type: 'receive-lot', lot: 'L-2', item: 'B-M10', quantity: 4 },
  'quarantine-lot': { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' },
  'clear-lot': { type: 'clear-lot', lot: 'L-1', reason: 'tested' },
  'approve-order': {
    type: 'approve-order',
    first: '1',
    orders: [{ supplier: 'thornby', ordered: '2026-03-04', freight: 0, lines: [] }],
  },
  'receive-order': { type: 'receive-order', order: '1', lines: [{ line: 0, good: '1' }] },
  'promise-order': { type: 'promise-order', order: '1', due: '2026-03-09' },
  'end-order-line': { type: 'end-order-line', order: '1', line: 0, why: 'cancelled' },
  'credit-order': { type: 'credit-order', order: '1', money: 100, why: 'bent' },
  'receive-stock': { type: 'receive-stock', goods: [{ item: 'W-M8', quantity: '100' }] },
  'count-stock': { type: 'count-stock', counts: [{ item: 'W-M8', counted: '12' }] },
  'draw-stock': { type: 'draw-stock', item: 'W-M8', quantity: '1', reason: 'lost' },
  'put-back': { type: 'put-back', item: 'W-M8', quantity: '1' },
  'put-away': { type: 'put-away', places: [{ item: 'W-M8', bin: '09C' }] },
  'set-item': { type: 'set-item', item: 'B-M10', minimum: '20' },
  'set-supplier': { type: 'set-supplier', supplier: 'H', name: 'Thornby', orderDays: [3], lead: 2 },
  'set-offer': {
    type: 'set-offer',
    supplier: 'H',
    item: 'B-M10',
    pack: '50',
    prices: [{ fromPacks: 1, price: 420 }],
  },
  'end-offer': { type: 'end-offer', offer: 'H/B-M10/50' },
  'import-items': { type: 'import-items', items: [{ item: 'B-M10', minimum: '20' }] },
  'import-offers': {
    type: 'import-offers',
    offers: [{ supplier: 'H', item: 'B-M10', pack: '50', prices: [{ fromPacks: 1, price: 420 }] }],
  },
  'pin-line': { type: 'pin-line', item: 'B-M10', buyToday: true },
  'unpin-line': { type: 'unpin-line', item: 'B-M10' },
  'start-car': { ...CAR, type: 'start-car', plan: 'Corbel 54 r1', chassis: 'CH-9' },
  'choose-option': { ...CAR, type: 'choose-option', option: 'heater', choice: 'none' },
  'advance-car': { ...CAR, type: 'advance-car', to: 'WH' },
  'send-back': { ...CAR, type: 'send-back', to: 'AX', reason: 'leak' },
  'deliver-car': { ...CAR, type: 'deliver-car' },
  'place-hold': { ...CAR, type: 'place-hold', scope: 'gate', reason: 'paper' },
  'release-hold': { ...CAR, type: 'release-hold', hold: 'H-1' },
  assign: { ...CAR, type: 'assign', job: 'operation:AX-010:1', add: ['tom'] },
  'add-note': { ...CAR, type: 'add-note', of: 'J-110', text: 'shimmed' },
  'add-photo': { ...CAR, type: 'add-photo', of: 'AX-010', slot: 'stamp', hash: 'h' },
  'start-operation': { ...OP, type: 'start-operation' },
  'join-operation': { ...OP, type: 'join-operation' },
  'leave-operation': { ...OP, type: 'leave-operation' },
  'pause-operation': { ...OP, type: 'pause-operation' },
  'resume-operation': { ...OP, type: 'resume-operation' },
  'take-over-operation': { ...OP, type: 'take-over-operation' },
  'finish-operation': { ...OP, type: 'finish-operation' },
  'snug-joint': { ...JOINT, type: 'snug-joint' },
  'final-joint': { ...JOINT, type: 'final-joint' },
  'verify-joint': { ...JOINT, type: 'verify-joint', method: 'seen' },
  'recheck-joint': { ...JOINT, type: 'recheck-joint' },
  'reject-joint': { ...JOINT, type: 'reject-joint', reason: 'no stripe' },
  'open-joint': { ...JOINT, type: 'open-joint' },
  'report-disturbed': { ...JOINT, type: 'report-disturbed', cause: 'stripe-broken' },
  'report-over-torque': { ...JOINT, type: 'report-over-torque', fastener: 1, reading: '60', unit: 'N·m' },
  'begin-check': { ...CHECK, type: 'begin-check' },
  'pass-check': { ...CHECK, type: 'pass-check' },
  'fail-check': { ...CHECK, type: 'fail-check', reason: 'weeps' },
  'report-finding': { ...CAR, type: 'report-finding', about: { kind: 'place', key: 'floor' }, text: 'dent' },
  'decide-finding': { ...CAR, type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'so' },
  'close-finding': { ...CAR, type: 'close-finding', finding: 'F-1' },
  'pick-kit': { ...OP, type: 'pick-kit', lines: [{ item: 'W-M8', quantity: '1' }] },
  'empty-kit': { ...OP, type: 'empty-kit' },
  'report-kit-line': { ...OP, type: 'report-kit-line', item: 'W-M8', what: 'wrong' },
  'ask-change': { ...CAR, type: 'ask-change', wait: 'AX-010', reason: 'dry' },
  'decide-change': { ...CAR, type: 'decide-change', change: 'D-1', approve: true },
  'place-stopgap': { ...CAR, type: 'place-stopgap', what: 'cable tie' },
  'remove-stopgap': { ...CAR, type: 'remove-stopgap', stopgap: 'G-01' },
  'set-condition': { ...CAR, type: 'set-condition', condition: 'on-stands', reason: 'seen' },
  'clear-condition': { ...CAR, type: 'clear-condition', condition: 'on-stands', reason: 'seen' },
  'receive-part': { ...CAR, type: 'receive-part', part: 'P-1' },
  'fit-part': { ...CAR, type: 'fit-part', part: 'P-1' },
  'take-part': { ...CAR, type: 'take-part', part: 'P-1', reason: 'for C2' },
  'strike-signature': { ...CAR, type: 'strike-signature', signature: 's', reason: 'mis-tap' },
};
const TYPES = Object.keys(CLAIMS) as ClaimType[];

type May = 'anyone' | 'lead or owner' | 'lead' | 'owner';
const ALLOWED: Readonly<Record<May, readonly Role[]>> = {
  anyone: ['owner', 'lead', 'technician'],
  'lead or owner': ['owner', 'lead'],
  lead: ['lead'],
  owner: ['owner'],
};

/** By section 2 of the design: who runs the floor, who pays and delivers; everything else is anybody's. */
const WHO: Readonly<Record<Exclude<May, 'anyone'>, readonly ClaimType[]>> = {
  'lead or owner': [
    'add-person',
    'qualify-person',
    'end-qualification',
    'rename-person',
    'remove-person',
    'add-tool',
    'add-adapter',
    'record-calibration',
    'release-plan',
    'receive-lot',
    'receive-order',
    'promise-order',
    'end-order-line',
    'credit-order',
    'receive-stock',
    'clear-lot',
    'set-item',
    'set-supplier',
    'set-offer',
    'end-offer',
    'import-items',
    'import-offers',
    'pin-line',
    'unpin-line',
    'start-car',
    'choose-option',
    'release-hold',
    'assign',
    'decide-finding',
    'decide-change',
  ],
  lead: ['advance-car', 'send-back'],
  owner: ['change-roles', 'deliver-car', 'approve-order'],
};
const mayOf = (type: ClaimType): May =>
  (['lead or owner', 'lead', 'owner'] as const).find((may) => WHO[may].includes(type)) ?? 'anyone';

/** The two lists of section 4.3, each act by the command that says it. */
const ASSURANCES: readonly ClaimType[] = [
  'start-operation',
  'finish-operation',
  'snug-joint',
  'final-joint',
  'verify-joint',
  'pass-check',
  'remove-stopgap',
  'set-condition',
  'close-finding',
  'decide-change',
  'release-hold',
  'fit-part',
  'advance-car',
  'receive-lot',
  'receive-stock',
  'receive-order',
  'approve-order',
  'receive-part',
  'deliver-car',
];
const WARNINGS: readonly ClaimType[] = [
  'open-joint',
  'report-disturbed',
  'report-over-torque',
  'reject-joint',
  'fail-check',
  'place-stopgap',
  'report-finding',
  'clear-condition',
  'place-hold',
  'strike-signature',
  'suspect-tool',
  'quarantine-lot',
  'send-back',
  'pause-operation',
  'leave-operation',
  'take-part',
  'draw-stock',
  'report-kit-line',
];

const shop = shopWith(
  plan({
    options: { heater: { name: 'Heater', choices: ['none', 'fitted'] } },
    stages: { AX: { name: 'Axle' }, WH: { name: 'Wheels' } },
    operations: { 'AX-010': { name: 'Hang the axle', stage: 'AX' } },
  }),
);
const person = (id: string, roles: readonly Role[], left = false) => ({
  id,
  name: id,
  roles,
  qualifications: [],
  left,
});
const factsFor = (actor: string): Facts => ({
  ...shop.facts(),
  actor,
  people: {
    owner: person('owner', ['owner']),
    lead: person('lead', ['lead']),
    technician: person('technician', ['technician']),
    both: person('both', ['technician', 'lead']),
    all: person('all', ['owner', 'lead', 'technician']),
    nobody: person('nobody', []),
    gone: person('gone', ['owner', 'lead', 'technician'], true),
  },
});
const refusedTo = (actor: string, claim: Claim) =>
  mayAct(factsFor(actor), { id: 'c', doneAt: shop.now, claim }).map((each) => each.code);

describe('given every command there is', () => {
  test('the table and this page list the same ones', () => {
    expect(Object.keys(COMMANDS).sort()).toEqual([...TYPES].sort());
  });

  test.each(TYPES.map((type) => [type, mayOf(type)] as const))('%s: %s may, and nobody else', (type, may) => {
    for (const role of ['owner', 'lead', 'technician'] as const)
      expect([role, refusedTo(role, CLAIMS[type])]).toEqual([
        role,
        ALLOWED[may].includes(role) ? [] : ['not-allowed'],
      ]);
    expect(refusedTo('all', CLAIMS[type])).toEqual([]);
    expect(refusedTo('both', CLAIMS[type])).toEqual(may === 'owner' ? ['not-allowed'] : []);
    // On the books without a role: whatever anybody may do.
    expect(refusedTo('nobody', CLAIMS[type])).toEqual(may === 'anyone' ? [] : ['not-allowed']);
    expect(refusedTo('gone', CLAIMS[type])).toEqual(['unknown-person']);
    expect(refusedTo('stranger', CLAIMS[type])).toEqual(['unknown-person']);
  });

  test.each(TYPES.filter((type) => mayOf(type) !== 'anyone'))(
    '%s by somebody who may not is refused by the rules themselves, for that alone',
    (type) => {
      const actor = 'nobody';
      const verdict = decide(factsFor(actor), shop.world, { id: 'c', doneAt: shop.now, claim: CLAIMS[type] });
      expect(verdict).toMatchObject({
        ok: false,
        error: [{ code: 'not-allowed', details: { act: type, actor } }],
      });
      expect(verdict.ok ? [] : verdict.error).toHaveLength(1);
    },
  );

  test('the shop words of each say what it is', () => {
    for (const type of TYPES) expect(COMMANDS[type].says).toMatch(/^\S.+\S$/);
    expect(new Set(TYPES.map((type) => COMMANDS[type].says)).size).toBe(TYPES.length);
  });
});

describe("given the design's two lists of acts (4.3)", () => {
  const kindOf = (type: ClaimType): CommandKind => COMMANDS[type].kind;

  test.each(ASSURANCES)('%s is an assurance', (type) => {
    expect(kindOf(type)).toBe('assurance');
  });
  test.each(WARNINGS)('%s is a warning', (type) => {
    expect(kindOf(type)).toBe('warning');
  });
  test('nothing is on both lists, and what is on neither is no warning', () => {
    expect(ASSURANCES.filter((type) => WARNINGS.includes(type))).toEqual([]);
    expect(TYPES.filter((type) => kindOf(type) === 'warning' && !WARNINGS.includes(type))).toEqual([]);
  });
  test('authority limits two warnings only: to send back, and to strike what is another’s', () => {
    expect(TYPES.filter((type) => kindOf(type) === 'warning' && mayOf(type) !== 'anyone')).toEqual([
      'send-back',
    ]);
    const limited = TYPES.filter((type) => kindOf(type) === 'warning' && COMMANDS[type].roles !== 'anyone');
    expect(limited).toEqual(['send-back']);
  });
});

describe('given what each command may be refused for', () => {
  test('a warning is refused for authority and for naming nothing, and for nothing else', () => {
    for (const type of WARNINGS)
      expect([type, COMMANDS[type].refuses]).toEqual([
        type,
        type === 'strike-signature' ? ['strike-needs-lead'] : [],
      ]);
  });
});

describe('given an empty book', () => {
  const empty = (actor: string, roles: readonly Role[]) =>
    mayAct(
      { ...shop.facts(), actor, people: {} },
      { id: 'c', doneAt: shop.now, claim: { type: 'add-person', person: actor, name: 'First', roles } },
    );

  test('the first person adds themselves as an owner, and not as anything less', () => {
    expect(empty('ada', ['owner'])).toEqual([]);
    expect(empty('ada', ['technician', 'owner'])).toEqual([]);
    for (const roles of [['lead'], ['technician'], []] as const)
      expect(empty('ada', roles).map((each) => each.code)).toEqual(['not-allowed']);
  });

  test('nothing but adding that person is possible', () => {
    const facts: Facts = { ...shop.facts(), actor: 'ada', people: {} };
    for (const type of TYPES.filter((each) => each !== 'add-person'))
      expect(
        mayAct(facts, { id: 'c', doneAt: shop.now, claim: CLAIMS[type] }).map((each) => each.code),
      ).toEqual(['unknown-person']);
  });

  test('once there is one, a stranger does not add themselves', () => {
    const claim: Claim = { type: 'add-person', person: 'eve', name: 'Eve', roles: ['owner'] };
    expect(refusedTo('eve', claim)).toEqual(['unknown-person']);
    expect(refusedTo('technician', claim)).toEqual(['not-allowed']);
  });
});
