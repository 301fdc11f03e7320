/** The shop's own books: people, tools, lots. */
import {
  compare,
  divide,
  exact,
  multiply,
  parseDecimal,
  subtract,
  toDecimalText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { ROLES } from '@/lib/domain/base/vocabulary';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { RecordCalibration, ShopClaim } from '@/lib/domain/commands';
import type { ShopPayload } from '@/lib/domain/shop-payload';
import type { Facts } from '@/lib/domain/facts';
import type { Person } from '@/lib/domain/shop/rows';
import { decideSupply } from './offers';
import { lastCalibration, widened } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';
import type { World } from '@/lib/domain/world';
import { decideDonorHardware } from './donor-hardware';
import { decidePurchase } from './purchases';
import { receivedLot } from './received-lot';
import type { ShopDecision } from './shop-decision';
import { decideSawing } from './sawing';
import { decideStock } from './stock';
import { decideTrip } from './trips';

const accept = (...events: readonly ShopPayload[]): ShopDecision => ({ refusals: [], events });
const deny = (...refusals: readonly Refusal[]): ShopDecision => ({ refusals, events: [] });
const unknown = (what: string, key: string): ShopDecision => deny(refuse('unknown-thing', { what, key }));
const there = (what: string, key: string): ShopDecision => deny(refuse('already-there', { what, key }));

export const decideShop = (facts: Facts, { stock, shop, cars }: World, claim: ShopClaim): ShopDecision => {
  switch (claim.type) {
    case 'receive-stock':
    case 'count-stock':
    case 'draw-stock':
    case 'put-back':
    case 'put-away':
    case 'count-remnants':
      return decideStock(facts, stock, claim);
    case 'saw-bars':
    case 'recut-pieces':
      return decideSawing(facts, { shop, cars }, claim);
    case 'approve-order':
    case 'receive-order':
    case 'promise-order':
    case 'end-order-line':
    case 'credit-order':
      return decidePurchase(facts, stock, claim);
    case 'keep-donor-hardware':
    case 'share-donor-lot':
      return decideDonorHardware(facts, claim);
    case 'open-trip':
    case 'promise-trip':
    case 'bill-trip':
      return decideTrip(facts, claim);
    case 'add-person': {
      if (facts.people[claim.person] !== undefined) return there('person', claim.person);
      const { person: id, name, roles } = claim;
      return accept({
        type: 'person-added',
        person: { id, name, roles, qualifications: claim.qualifications ?? [], left: false },
      });
    }
    case 'qualify-person':
      return facts.people[claim.person] === undefined
        ? unknown('person', claim.person)
        : accept({ type: 'person-qualified', person: claim.person, qualification: claim.qualification });
    case 'end-qualification': {
      const person = facts.people[claim.person];
      if (person === undefined) return unknown('person', claim.person);
      return person.qualifications.some(({ key }) => key === claim.key)
        ? accept({ type: 'qualification-ended', person: claim.person, key: claim.key, last: claim.last })
        : unknown('qualification', claim.key);
    }
    case 'rename-person': {
      const person = facts.people[claim.person];
      if (person === undefined) return unknown('person', claim.person);
      return person.name === claim.name
        ? accept()
        : accept({ type: 'person-renamed', person: person.id, name: claim.name, was: person.name });
    }
    case 'change-roles': {
      const person = facts.people[claim.person];
      return person === undefined ? unknown('person', claim.person) : changeRoles(facts, person, claim.roles);
    }
    case 'remove-person': {
      const person = facts.people[claim.person];
      if (person === undefined) return unknown('person', claim.person);
      return isLastOwner(facts, claim.person)
        ? deny(refuse('last-owner', { person: claim.person }))
        : accept({ type: 'person-removed', person: claim.person });
    }
    case 'add-tool':
      return facts.tools[claim.tool] === undefined ? addTool(claim) : there('tool', claim.tool);
    case 'add-adapter': {
      if (facts.adapters[claim.adapter] !== undefined) return there('adapter', claim.adapter);
      if (parseDecimal(claim.extension) === null)
        return deny(
          refuse('value-unreadable', { field: 'extension', text: claim.extension, wanted: 'a length' }),
        );
      const extension = { value: claim.extension, unit: claim.unit };
      const { adapter: id, name, angle } = claim;
      return accept({ type: 'adapter-added', adapter: { id, name, extension, angle: angle ?? 0 } });
    }
    case 'record-calibration':
      return calibrated(facts, claim);
    case 'suspect-tool': {
      const tool = facts.tools[claim.tool];
      if (tool === undefined) return unknown('tool', claim.tool);
      return accept({
        type: 'tool-suspected',
        tool: claim.tool,
        interval: {
          from: claim.from ?? facts.judgedAt,
          until: null,
          knownAt: facts.judgedAt,
          reason: claim.reason,
          low: null,
          high: null,
        },
      });
    }
    case 'release-plan':
      return releasePlan(facts, claim.plan);
    case 'receive-lot':
      return facts.lots[claim.lot] === undefined
        ? accept({ type: 'lot-received', lot: receivedLot(facts, claim) })
        : there('lot', claim.lot);
    case 'quarantine-lot':
      return facts.lots[claim.lot] === undefined
        ? unknown('lot', claim.lot)
        : accept({ type: 'lot-quarantined', lot: claim.lot, reason: claim.reason });
    case 'clear-lot': {
      const lot = facts.lots[claim.lot];
      if (lot === undefined) return unknown('lot', claim.lot);
      return lot.quarantined === null
        ? deny(refuse('lot-not-quarantined', { lot: claim.lot }))
        : accept({ type: 'lot-cleared', lot: claim.lot, reason: claim.reason });
    }
    case 'set-rate': {
      // The one row that a rule reads past the facts: they go to browsers, and no rate does.
      const rate = { id: claim.from, money: claim.money };
      return shop.rates[rate.id]?.money === rate.money ? accept() : accept({ type: 'rate-set', rate });
    }
    default:
      return decideSupply(facts, claim);
  }
};

const changeRoles = (facts: Facts, { id, roles: was }: Person, wanted: readonly Role[]): ShopDecision => {
  const roles = ROLES.filter((role) => wanted.includes(role));
  if (isLastOwner(facts, id) && !roles.includes('owner')) return deny(refuse('last-owner', { person: id }));
  const isSame = roles.length === was.length && roles.every((role) => was.includes(role));
  return isSame ? accept() : accept({ type: 'roles-changed', person: id, roles, was });
};

const isLastOwner = (facts: Facts, id: string): boolean => {
  const owners = Object.values(facts.people).filter(({ roles, left }) => !left && roles.includes('owner'));
  return owners.length === 1 && owners[0]?.id === id;
};

/** One name, one document: what was built by a revision must stay readable under its name. */
const releasePlan = (facts: Facts, plan: string): ShopDecision => {
  const document = facts.plans[plan];
  if (document === undefined) return unknown('plan revision', plan);
  const { plan: model, revision } = document;
  const isTaken = Object.values(facts.released).some(
    (each) => each.model === model && each.revision === revision,
  );
  return isTaken || facts.released[plan] !== undefined
    ? there('plan revision', `${model} ${revision}`)
    : accept({ type: 'plan-released', plan, model, revision });
};

const addTool = (claim: Extract<ShopClaim, { type: 'add-tool' }>): ShopDecision => {
  const low = parseDecimal(claim.low);
  const high = parseDecimal(claim.high);
  if (low === null || high === null || compare(low, high) > 0)
    return deny(
      refuse('value-unreadable', {
        field: 'range',
        text: `${claim.low} to ${claim.high}`,
        wanted: 'low to high',
      }),
    );
  const tool: Tool = {
    id: claim.tool,
    name: claim.name,
    kind: claim.kind,
    low: claim.low,
    high: claim.high,
    unit: claim.unit,
    ...(claim.length === undefined ? {} : { length: claim.length }),
    calibrations: claim.calibrated === undefined ? [] : [claim.calibrated],
    ...(claim.cycleLimit === undefined ? {} : { cycles: { used: 0, limit: claim.cycleLimit } }),
    suspect: [],
  };
  return accept({ type: 'tool-added', tool });
};

/** Usual permissible deviation of a torque tool above 10 N·m, percent (ISO 6789-1:2017, from memory). */
const USUAL_TOLERANCE = '4';

const calibrated = (facts: Facts, claim: RecordCalibration): ShopDecision => {
  const tool = facts.tools[claim.tool];
  if (tool === undefined) return unknown('tool', claim.tool);
  const errors = (claim.asFound ?? []).map(({ set, delivered }) => errorPercent(set, delivered));
  const unreadable = errors.findIndex((error) => error === null);
  if (unreadable >= 0) {
    const bad = claim.asFound?.[unreadable];
    return deny(
      refuse('value-unreadable', {
        field: 'asFound',
        text: `${bad?.set ?? ''} → ${bad?.delivered ?? ''}`,
        wanted: 'two numbers, the first not 0',
      }),
    );
  }
  const calibration = {
    on: claim.on,
    due: claim.due,
    ...(claim.certificate === undefined ? {} : { certificate: claim.certificate }),
  };
  return accept(
    ...asFound(
      facts,
      tool,
      claim,
      errors.filter((error) => error !== null),
    ),
    { type: 'tool-calibrated', tool: claim.tool, calibration },
  );
};

const errorPercent = (set: string, delivered: string): Exact | null => {
  const wanted = parseDecimal(set);
  const got = parseDecimal(delivered);
  const share = wanted === null || got === null ? null : divide(subtract(got, wanted), wanted);
  return share === null ? null : multiply(share, exact(100n));
};

/**
 * What the bench found about the time before. Suspicions that stand open end with the found error; a tool that
 * nobody suspected and that reads wrong was wrong since its last good calibration (D53).
 */
const asFound = (
  facts: Facts,
  tool: Tool,
  claim: RecordCalibration,
  errors: readonly Exact[],
): readonly ShopPayload[] => {
  const first = errors[0];
  if (first === undefined) return [];
  const worst = {
    low: errors.reduce((a, b) => (compare(a, b) <= 0 ? a : b), first),
    high: errors.reduce((a, b) => (compare(a, b) >= 0 ? a : b), first),
  };
  const tolerance = parseDecimal(claim.tolerance ?? USUAL_TOLERANCE) ?? exact(4n);
  const isOut =
    compare(worst.high, tolerance) > 0 || compare(worst.low, exact(-tolerance.num, tolerance.den)) < 0;
  const band = widened(worst, parseDecimal(claim.uncertainty ?? '0') ?? exact(0n));
  const low = toDecimalText(band.low);
  const high = toDecimalText(band.high);
  const found: ShopPayload[] = [];
  if (tool.suspect.some((interval) => interval.until === null))
    found.push({ type: 'tool-tested', tool: tool.id, until: facts.judgedAt, low, high });
  if (isOut)
    found.push({
      type: 'tool-suspected',
      tool: tool.id,
      interval: {
        from: sinceLastGood(tool),
        until: facts.judgedAt,
        knownAt: facts.judgedAt,
        reason: 'as-found',
        low,
        high,
      },
    });
  return found;
};

/** From the first moment of the last calibration's day; a tool never calibrated was never known to be good. */
const sinceLastGood = (tool: Tool): string => `${lastCalibration(tool)?.on ?? '0000-01-01'}T00:00:00.000Z`;
