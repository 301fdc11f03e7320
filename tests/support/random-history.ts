/**
 * Random histories on two cars of one random plan. Most moves are useful ones, since nonsense alone never gets far; the
 * rest is what a shop does wrong: the wrong person, cycle or tool, late or doubted clocks, bad lots, openings, strikes,
 * cars sent back, holds. A move is a few numbers read against the state it meets, so that a history shrinks well.
 */
import fc from 'fast-check';
import { toNumber } from '@/lib/domain/base/exact';
import { DISPOSITIONS, HOLD_SCOPES, SUSPECT_REASONS } from '@/lib/domain/base/vocabulary';
import { GRADES, OUTCOMES } from '@/lib/domain/car/component-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { Lot } from '@/lib/domain/shop/rows';
import type { Claim } from '@/lib/domain/commands';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { driveOn, finalClaim, goodValues, useful } from './drive';
import { CARS, Game, LEAD, OWNER, PEOPLE, TRIP, openShop, startCar } from './game';
import type { Timing, Watch } from './game';
import { ITEMS, randomPlan } from './random-plan';
import type { Rules } from './rules';

const ODD = [
  'start-operation',
  'join-operation',
  'pause-operation',
  'resume-operation',
  'take-over-operation',
  'finish-operation',
  'snug-joint',
  'final-joint',
  'final-joint',
  'verify-joint',
  'verify-joint',
  'verify-joint',
  'recheck-joint',
  'reject-joint',
  'open-joint',
  'open-joint',
  'report-disturbed',
  'report-over-torque',
  'begin-check',
  'pass-check',
  'fail-check',
  'place-stopgap',
  'remove-stopgap',
  'set-condition',
  'clear-condition',
  'receive-part',
  'fit-part',
  'take-part',
  'report-finding',
  'decide-finding',
  'close-finding',
  'ask-change',
  'decide-change',
  'place-hold',
  'release-hold',
  'strike-signature',
  'strike-signature',
  'advance-car',
  'send-back',
  'send-back',
  'deliver-car',
  'suspect-tool',
  'record-calibration',
  'suspect-tool',
  'record-calibration',
  'quarantine-lot',
  'clear-lot',
  'clear-lot',
  'leave-operation',
  'resume-operation',
  'assign',
  'add-note',
] as const;

/** What may go wrong when all that is left is the gate. */
const SPOILERS: readonly (typeof ODD)[number][] = [
  'clear-condition',
  'clear-condition',
  'clear-condition',
  'open-joint',
  'reject-joint',
  'report-disturbed',
  'report-over-torque',
  'fail-check',
  'place-stopgap',
  'report-finding',
  'place-hold',
  'strike-signature',
  'strike-signature',
  'take-part',
  'suspect-tool',
  'record-calibration',
  'quarantine-lot',
  'quarantine-lot',
  'ask-change',
];

export interface Move {
  readonly kind: 'drive' | 'eve' | 'useful' | 'odd' | 'wait';
  readonly odd: (typeof ODD)[number];
  readonly car: number;
  readonly who: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly late: number;
}

const weighted = fc.nat({ max: 99 }).map((drawn): Move['kind'] => {
  if (drawn < 32) return 'odd';
  if (drawn < 54) return 'eve';
  if (drawn < 75) return 'drive';
  return drawn < 97 ? 'useful' : 'wait';
});

const number = fc.nat({ max: 9999 });
const move: fc.Arbitrary<Move> = fc.record({
  kind: weighted,
  odd: fc.constantFrom(...ODD),
  car: fc.nat({ max: 3 }),
  who: number,
  a: number,
  b: number,
  c: number,
  late: fc.nat({ max: 20 }),
});

export interface History {
  readonly plan: PlanDocument;
  readonly moves: readonly Move[];
}
export const randomMoves: fc.Arbitrary<readonly Move[]> = fc.array(move, { minLength: 1, maxLength: 30 });
export const randomHistory: fc.Arbitrary<History> = fc.record({ plan: randomPlan, moves: randomMoves });

/** Plays a history through these rules; `watch` sees every accepted command. */
export const playHistory = (rules: Rules, { plan, moves }: History, watch?: Watch): Game => {
  const game = new Game(rules, plan, watch);
  openShop(game);
  startCar(game, CARS[0] ?? '', { heater: 'fitted' });
  startCar(game, CARS[1] ?? '');
  for (const each of moves) applyMove(game, rules, each);
  return game;
};

const at = <T>(list: readonly T[], drawn: number): T | undefined =>
  list.length === 0 ? undefined : list[drawn % list.length];

/** Three of four moves are on the first car, so that one gets somewhere. */
const carOf = (drawn: number): string => CARS[drawn === 3 ? 1 : 0] ?? '';

const applyMove = (game: Game, rules: Rules, move: Move): void => {
  const id = carOf(move.car);
  switch (move.kind) {
    case 'wait':
      game.now += 3_600_000 * (1 + (move.a % 30));
      return;
    case 'drive':
      for (let steps = move.a % 14; steps >= 0; steps -= 1) if (!driveOn(game, rules, id)) return;
      return;
    case 'useful': {
      const act = at([...useful(game, rules, id, false)], move.a);
      if (act === undefined) return;
      game.play(move.b % 3 === 0 ? personOf(move) : act.by, act.claim, timing(move));
      return;
    }
    case 'eve':
      // Up to the gate, where one thing that goes wrong is all that keeps it closed.
      for (let steps = 40; steps > 0 && driveOn(game, rules, id, false);) steps -= 1;
      odd(game, id, { ...move, odd: at(SPOILERS, move.b + move.c) ?? move.odd });
      return;
    case 'odd':
      odd(game, id, move);
  }
};

const odd = (game: Game, id: string, move: Move): void => {
  const car = game.car(id);
  const claim = oddClaim(game, car, game.plan(car), move);
  if (claim !== null) game.play(personFor(move, claim), claim, timing(move));
  tryGate(game, id);
};

/** An eager lead tries the gate whenever something has happened. */
const tryGate = (game: Game, id: string): void => {
  const car = game.car(id);
  const next = game.plan(car).stages[car.stage + 1];
  if (next !== undefined) game.play(LEAD, { type: 'advance-car', car: id, to: next.key });
  else if (!car.delivered) game.play(OWNER, { type: 'deliver-car', car: id });
};

const personOf = (move: Move): string => at(PEOPLE, move.who)?.id ?? LEAD;

/** Half of what only a lead may do is done by one. */
const personFor = (move: Move, claim: Claim): string => {
  const asksLead =
    /^(advance|send|decide|release|record|clear-lot|share|strike|choose|assign|receive-lot)/.test(claim.type);
  if (claim.type === 'deliver-car' && move.who % 2 === 0) return OWNER;
  return asksLead && move.who % 2 === 0 ? LEAD : personOf(move);
};

/** Mostly heard at once; else minutes or hours late, before the device was last in touch, or from a clock that runs ahead. */
const timing = ({ late, b, who }: Move): Timing => {
  const base: Timing = who % 3 === 0 ? { override: { code: 'room-full', reason: 'it fits' } } : {};
  if (late < 12) return base;
  if (late === 12) return { ...base, lateMinutes: -(b % 90) };
  if (late === 13) return { ...base, lateMinutes: b % 300, contactMinutes: b % 100 };
  return { ...base, lateMinutes: b % 240, contactMinutes: 300 };
};

const cycleOf = (current: number, drawn: number): number | undefined =>
  drawn % 5 === 0 ? current + 1 : drawn % 5 === 1 ? current : drawn % 17 === 2 ? current - 1 : undefined;

const oddClaim = (game: Game, car: Car, plan: CompiledPlan, move: Move): Claim | null => {
  const { a, b } = move;
  // Mostly of what is begun, doubted or kept apart: the rest is mostly refused.
  const begun = Object.keys(car.operations).filter((key) => car.operations[key]?.status !== 'finished');
  const operation = at(b % 3 > 0 && begun.length > 0 ? begun : [...plan.operations.keys()], a);
  const tools = Object.values(game.world.shop.tools);
  const suspects = tools.filter((each) => each.suspect.some(({ until }) => until === null));
  const isTest = move.odd === 'record-calibration' && suspects.length > 0;
  const tool = at(isTest ? suspects : tools, b)?.id ?? 'W-1';
  // Mostly of the lots that are fitted first.
  const lots = Object.values(game.world.shop.lots);
  const apart = lots.filter((each) => each.quarantined !== null);
  const first = lots.filter((each) => each.id.endsWith('1'));
  const lot = at(move.odd === 'clear-lot' ? apart : b % 4 === 0 ? lots : first, a)?.id ?? '';
  switch (move.odd) {
    case 'start-operation':
    case 'join-operation':
    case 'pause-operation':
    case 'leave-operation':
    case 'resume-operation':
    case 'take-over-operation':
    case 'finish-operation':
      return operation === undefined ? null : { type: move.odd, car: car.id, operation };
    case 'suspect-tool': {
      const from = new Date(game.now - (b % 500) * 60_000).toISOString();
      const reason = at(SUSPECT_REASONS, a) ?? 'dropped';
      return { type: 'suspect-tool', tool, reason, ...(b % 2 === 0 ? { from } : {}) };
    }
    case 'record-calibration':
      return calibration(game, tool, move);
    case 'quarantine-lot':
      return { type: 'quarantine-lot', lot, reason: 'bad threads' };
    case 'clear-lot':
      return { type: 'clear-lot', lot, reason: 'good after all' };
    case 'advance-car':
      return {
        type: 'advance-car',
        car: car.id,
        to: plan.stages[car.stage + 1 + (b % 5 === 0 ? 1 : 0)]?.key ?? 'S1',
      };
    case 'send-back':
      return {
        type: 'send-back',
        car: car.id,
        to: plan.stages[a % Math.max(1, car.stage)]?.key ?? 'S1',
        reason: 'again',
      };
    case 'deliver-car':
      return { type: 'deliver-car', car: car.id };
    case 'assign':
      return { type: 'assign', car: car.id, job: `stage:S1`, add: [personOf(move)] };
    case 'add-note':
      return b % 2 === 0
        ? { type: 'add-note', car: car.id, of: operation ?? '', text: 'seen' }
        : offDonor(car, move, lots);
    case 'strike-signature': {
      const signature = at(Object.keys(car.signatures).reverse(), b % 2 === 0 ? a % 4 : a);
      return signature === undefined
        ? null
        : { type: 'strike-signature', car: car.id, signature, reason: 'wrong one' };
    }
    default:
      return oddJoint(game, car, plan, move) ?? oddThing(car, plan, move);
  }
};

/** As found: mostly good, sometimes low, high, or both. */
const calibration = (game: Game, tool: string, { a, b }: Move): Claim => {
  const today = new Date(game.now).toISOString().slice(0, 10);
  const found = at(['101', '93', '107', '99', '112'], b) ?? '100';
  return {
    type: 'record-calibration',
    tool,
    on: today,
    due: '2027-12-31',
    ...(a % 4 === 0
      ? {}
      : {
          asFound: [
            { set: '100', delivered: found },
            { set: '50', delivered: '50' },
          ],
        }),
    ...(a % 3 === 0 ? { uncertainty: '1' } : {}),
  };
};

/** What came off its donor, or is for any car from now on. */
const offDonor = (car: Car, { a, b }: Move, lots: readonly Lot[]): Claim => {
  const kept = lots.filter(({ donor }) => donor?.isShared === false);
  const shared = at(kept, a);
  if (shared !== undefined && b % 4 === 1) return { type: 'share-donor-lot', lot: shared.id };
  const item = at(Object.keys(ITEMS), a) ?? '';
  return { type: 'keep-donor-hardware', donorOf: car.id, lines: [{ item, good: String(1 + (a % 9)) }] };
};

const oddJoint = (game: Game, car: Car, plan: CompiledPlan, move: Move): Claim | null => {
  const { a, b, c } = move;
  // Joints that somebody has touched are asked more often.
  const key = at(b % 3 === 0 ? [...plan.joints.keys()] : Object.keys(car.joints), a);
  const joint = plan.joints.get(key ?? '');
  if (joint === undefined || key === undefined) return null;
  const cycle = cycleOf(car.joints[key]?.cycle ?? 1, b);
  const named = { car: car.id, joint: key, ...(cycle === undefined ? {} : { cycle }) };
  const tools = Object.values(game.world.shop.tools);
  const tool = at(tools, c);
  const some = joint.order.filter((each) => (c + each) % 2 === 0);
  const hardware = hardwareOf(game, plan, key, move);
  switch (move.odd) {
    case 'snug-joint':
      return { type: 'snug-joint', ...named, hardware };
    case 'final-joint': {
      const { low, high } =
        joint.specification.kind === 'window' ? joint.specification.window : { low: null, high: null };
      const values = [low, high].map((each) => (each === null ? 25 : toNumber(each)));
      const value = at([...values, ...values, (values[0] ?? 1) - 1, (values[1] ?? 1) + 1, 40], c);
      const claim = finalClaim(car.id, joint, tool ?? 'none', b % 2 === 0 ? String(value) : undefined);
      return {
        ...claim,
        ...named,
        ...(c % 2 === 0 ? { hardware } : {}),
        ...(c % 11 === 0 ? { tool: 'no such tool' } : {}),
      };
    }
    case 'verify-joint':
      return {
        type: 'verify-joint',
        ...named,
        method: c % 7 === 0 ? 'witnessed' : (joint.verify ?? 'seen'),
        ...(tool === undefined ? {} : { tool: tool.id }),
      };
    case 'recheck-joint':
      return { type: 'recheck-joint', ...named, ...(tool === undefined ? {} : { tool: tool.id }) };
    case 'reject-joint':
      return { type: 'reject-joint', ...named, reason: 'stripe not in line' };
    case 'open-joint':
      return { type: 'open-joint', ...named, fasteners: some };
    case 'report-disturbed':
      return {
        type: 'report-disturbed',
        ...named,
        cause: c % 2 === 0 ? 'moved' : 'stripe-broken',
        ...(some.length === 0 ? {} : { fasteners: some }),
      };
    case 'report-over-torque':
      return {
        type: 'report-over-torque',
        ...named,
        fastener: joint.order[c % joint.order.length] ?? 1,
        reading: '140',
        unit: 'N·m',
        ...(c % 2 === 0 ? { tool: tool?.id } : {}),
        ...(c % 5 === 0 ? { adapter: 'A-1' } : {}),
      };
    default:
      return null;
  }
};

const hardwareOf = (
  game: Game,
  plan: CompiledPlan,
  key: string,
  { c, who }: Move,
): readonly { item: string; lot?: string; reused?: boolean; fasteners?: readonly number[] }[] =>
  (plan.joints.get(key)?.hardware ?? []).map(({ item }) => {
    const lots = Object.values(game.world.shop.lots).filter((lot) => lot.item === item || c % 13 === 0);
    const lot = at(lots, who)?.id;
    return {
      item,
      ...(lot === undefined ? {} : { lot }),
      ...(c % 4 === 0 ? { reused: true } : {}),
      ...(c % 6 === 0 ? { fasteners: [1] } : {}),
    };
  });

const oddThing = (car: Car, plan: CompiledPlan, { odd, a, b, c }: Move): Claim | null => {
  const check = at([...plan.checks.values()], a);
  const condition = at(Object.keys(plan.document.conditions ?? {}), a);
  const part = at(Object.keys(plan.document.parts ?? {}), a);
  const stopgap = at([...plan.stopgaps.keys()], a);
  const finding = at(Object.keys(car.findings), a);
  const change = at(Object.keys(car.changes), a);
  const hold = at(Object.keys(car.holds), a);
  const on = { car: car.id };
  switch (odd) {
    case 'begin-check':
      return check === undefined ? null : { type: 'begin-check', ...on, check: check.stateKey };
    case 'pass-check':
      return check === undefined
        ? null
        : {
            type: 'pass-check',
            ...on,
            check: check.stateKey,
            values: {
              ...goodValues(check),
              ...(b % 3 === 0 && check.values[0] !== undefined
                ? { [check.values[0].name]: b % 2 === 0 ? '9' : 'no' }
                : {}),
            },
          };
    case 'fail-check':
      return check === undefined
        ? null
        : { type: 'fail-check', ...on, check: check.stateKey, reason: 'cracked' };
    case 'place-stopgap':
      return stopgap === undefined || b % 2 === 0
        ? {
            type: 'place-stopgap',
            ...on,
            what: 'strap',
            quantity: 1 + (c % 2),
            slaveIn: [...plan.joints.keys()].slice(0, c % 2),
          }
        : { type: 'place-stopgap', ...on, stopgap };
    case 'remove-stopgap': {
      const placed = at(Object.keys(car.stopgaps), a);
      return placed === undefined
        ? null
        : {
            type: 'remove-stopgap',
            ...on,
            stopgap: placed,
            ...(b % 2 === 0 ? { quantity: 1 + (b % 3) } : {}),
          };
    }
    case 'set-condition':
    case 'clear-condition':
      return condition === undefined ? null : { type: odd, ...on, condition, reason: 'reported' };
    case 'receive-part':
      return part === undefined
        ? null
        : {
            type: odd,
            ...on,
            part,
            ...(b % 3 === 0 ? {} : { looked: 'true to 0.1' }),
            ...(c % 4 === 0 ? { from: CARS[c % 2] ?? '' } : {}),
          };
    case 'fit-part':
      return part === undefined ? null : { type: odd, ...on, part };
    case 'take-part':
      return part === undefined ? null : aboutComponent(on.car, part, { b, c });
    case 'report-finding': {
      const about = at(
        [
          { kind: 'place' as const, key: 'left rail' },
          { kind: 'joint' as const, key: at([...plan.joints.keys()], b) ?? '' },
          { kind: 'part' as const, key: part ?? '' },
          { kind: 'check' as const, key: check?.stateKey ?? '' },
        ],
        c,
      );
      return about === undefined ? null : { type: 'report-finding', ...on, about, text: 'dent' };
    }
    case 'decide-finding':
      return finding === undefined
        ? null
        : {
            type: 'decide-finding',
            ...on,
            finding,
            disposition: at(DISPOSITIONS, b) ?? 'rework',
            reason: 'so',
          };
    case 'close-finding':
      return finding === undefined ? null : { type: 'close-finding', ...on, finding };
    case 'ask-change':
      return {
        type: 'ask-change',
        ...on,
        wait: at([...plan.operations.keys()], a) ?? '',
        reason: 'dry enough',
      };
    case 'decide-change':
      return change === undefined
        ? null
        : { type: 'decide-change', ...on, change, approve: b % 3 > 0, reason: 'so' };
    case 'place-hold':
      return {
        type: 'place-hold',
        ...on,
        scope: at(HOLD_SCOPES, b) ?? 'gate',
        things: [at([...plan.operations.keys()], a) ?? ''],
        reason: 'wait',
      };
    case 'release-hold':
      return hold === undefined ? null : { type: 'release-hold', ...on, hold };
    default:
      return null;
  }
};

/** Off for another car, or graded, sent out, counted in: what may be said of a part in one slot of the list. */
const aboutComponent = (car: string, part: string, { b, c }: Pick<Move, 'b' | 'c'>): Claim => {
  const [grade, how] = [at(GRADES, b), at(OUTCOMES, b)];
  if (c % 4 === 1 && grade !== undefined)
    return { type: 'grade-parts', car, parts: [{ part, place: '4A', ...(b % 3 === 0 ? {} : { grade }) }] };
  if (c % 4 === 2) return { type: 'send-parts', car, trip: TRIP, parts: [{ part, work: 'skim' }] };
  if (c % 4 === 3 && how !== undefined)
    return { type: 'return-parts', car, trip: TRIP, parts: [{ part, how }] };
  return {
    type: 'take-part',
    car,
    part,
    reason: 'needed elsewhere',
    ...(b % 2 === 0 ? { takenFor: 'two' } : {}),
  };
};
