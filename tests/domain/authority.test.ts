import { describe, expect, test } from 'vitest';
import { COMMANDS, mayAct } from '@/lib/domain/authority';
import type { CommandKind, Role } from '@/lib/domain/base/vocabulary';
import type { Claim, ClaimType } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import type { Facts } from '@/lib/domain/facts';
import { CLAIMS } from '@/tests/support/every-claim';
import { plan, shopWith } from '@/tests/support/shop';

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
    'share-donor-lot',
    'set-item',
    'set-supplier',
    'set-offer',
    'quote-outside',
    'end-offer',
    'import-items',
    'import-offers',
    'pin-line',
    'unpin-line',
    'open-trip',
    'promise-trip',
    'bill-trip',
    'start-car',
    'record-donor',
    'choose-option',
    'release-hold',
    'assign',
    'decide-finding',
    'decide-change',
  ],
  lead: ['advance-car', 'send-back'],
  owner: ['change-roles', 'deliver-car', 'approve-order', 'set-rate'],
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
  'send-parts',
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
