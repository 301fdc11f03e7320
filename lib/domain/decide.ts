/**
 * (facts, world, command) → what happened, or every reason why not. Dispatch only: each noun's rules stand in
 * `decide/`. Pure: the same code answers on the server, in the browser, in the seed and in `replay`.
 */
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { err, ok } from './base/result';
import type { Result } from './base/result';
import { COMMANDS, mayAct } from './authority';
import type { CarClaim, Claim, Command, ShopClaim } from './commands';
import { accept, deny, unknown } from './decide/case';
import type { Case, Decision } from './decide/case';
import { askChange, decideChange } from './decide/changes';
import { decideCheck } from './decide/checks';
import { closeFinding, decideFinding, reportFinding } from './decide/findings';
import { recheck, verify } from './decide/joint-eyes';
import { open, reject, reportDisturbed, reportOverTorque } from './decide/joint-warnings';
import { final, jointCase, snug } from './decide/joints';
import type { JointCase } from './decide/joints';
import { advance, deliver, sendBack } from './decide/moves';
import { decideComponents, receivePart } from './decide/components';
import { recordDonor } from './decide/donor';
import { decideKit } from './decide/kits';
import { decideOperation } from './decide/operations';
import { asSigned } from './decide/signer';
import { addPhoto, withPhotos } from './decide/photos';
import { decideShop } from './decide/shop';
import { startCar } from './decide/start-car';
import { placeStopgap, removeStopgap } from './decide/stopgaps';
import { strike } from './decide/strike';
import {
  assign,
  chooseOption,
  clearCondition,
  fitPart,
  placeHold,
  releaseHold,
  setCondition,
  takePart,
} from './decide/things';
import type { Meta } from './event-meta';
import type { Event } from './events';
import { planOf } from './facts';
import type { Facts } from './facts';
import type { Stock } from './shop/stock';
import type { World } from './world';

/** Judges one command. A refusal lists every reason, not the first. */
export const decide = (
  facts: Facts,
  world: World,
  command: Command,
): Result<readonly Event[], readonly Refusal[]> => {
  const unauthorised = mayAct(facts, command);
  if (unauthorised.length > 0) return err(unauthorised);
  const meta = metaOf(facts, command);
  const { claim } = command;
  if (isShopClaim(claim)) {
    const { refusals, events } = decideShop(facts, world, claim);
    return refusals.length > 0
      ? err(refusals)
      : ok(events.map((event): Event => ({ ...event, v: 1, stream: 'shop', meta })));
  }
  const decision = overridden(decideCar(facts, world, command.id, claim), facts, world, command);
  return decision.refusals.length > 0
    ? err(decision.refusals)
    : ok(
        decision.events.map((event): Event => ({
          ...asSigned(facts, event),
          v: 1,
          stream: 'car',
          car: claim.car,
          meta,
        })),
      );
};

const isShopClaim = (claim: Claim): claim is ShopClaim => COMMANDS[claim.type].stream === 'shop';

const metaOf = (facts: Facts, command: Command): Meta => ({
  command: command.id,
  by: facts.actor,
  at: facts.judgedAt,
  doneAt: command.doneAt,
  receivedAt: facts.now,
  clockDoubted: facts.clockDoubted,
  device: facts.device,
  batch: command.batch ?? null,
});

const decideCar = (facts: Facts, world: World, command: string, claim: CarClaim): Decision => {
  const car = world.cars[claim.car];
  if (claim.type === 'start-car') return startCar(facts, car, claim);
  if (car === undefined) return unknown('car', claim.car);
  const plan = planOf(facts, car);
  if (plan === null) return unknown('plan revision', car.plan);
  const at = { command, facts, car, plan };
  return withPhotos(at, claim, onCar(at, world.stock, claim));
};

/**
 * A lead's override counts only where everything that is left is soft (D9). The refusals themselves are judged
 * first, so that nothing hard slips past behind a soft one.
 */
const overridden = (decision: Decision, facts: Facts, world: World, command: Command): Decision => {
  const { override, claim } = command;
  if (override === undefined || decision.refusals.length === 0 || claim.type !== 'advance-car')
    return decision;
  const isLead = facts.people[facts.actor]?.roles.includes('lead') ?? false;
  const hard = decision.refusals.filter((refusal) => refusal.soft !== true || refusal.code !== override.code);
  if (hard.length > 0 || !isLead) return decision;
  const car = world.cars[claim.car];
  const plan = car === undefined ? null : planOf(facts, car);
  const from = car === undefined ? undefined : plan?.stages[car.stage];
  if (from === undefined) return decision;
  return accept({
    type: 'gate-passed',
    from: from.index,
    to: from.index + 1,
    stage: from.key,
    overridden: [override.code],
    reason: override.reason,
  });
};

const onCar = (at: Case, stock: Stock, claim: Exclude<CarClaim, { type: 'start-car' }>): Decision => {
  switch (claim.type) {
    case 'start-operation':
    case 'join-operation':
    case 'pause-operation':
    case 'leave-operation':
    case 'resume-operation':
    case 'take-over-operation':
    case 'finish-operation':
      return decideOperation(at, claim);
    case 'snug-joint':
      return onJoint(at, claim.joint, (joint) => snug(joint, claim));
    case 'final-joint':
      return onJoint(at, claim.joint, (joint) => final(joint, claim));
    case 'verify-joint':
      return onJoint(at, claim.joint, (joint) => verify(joint, claim));
    case 'recheck-joint':
      return onJoint(at, claim.joint, (joint) => recheck(joint, claim));
    case 'reject-joint':
      return onJoint(at, claim.joint, (joint) => reject(joint, claim));
    case 'open-joint':
      return onJoint(at, claim.joint, (joint) => open(joint, claim));
    case 'report-disturbed':
      return onJoint(at, claim.joint, (joint) => reportDisturbed(joint, claim));
    case 'report-over-torque':
      return onJoint(at, claim.joint, (joint) => reportOverTorque(joint, claim));
    case 'begin-check':
    case 'pass-check':
    case 'fail-check':
      return decideCheck(at, claim);
    case 'place-stopgap':
      return placeStopgap(at, claim);
    case 'remove-stopgap':
      return removeStopgap(at, claim);
    case 'set-condition':
      return setCondition(at, claim);
    case 'clear-condition':
      return clearCondition(at, claim);
    case 'receive-part':
      return receivePart(at, claim);
    case 'fit-part':
      return fitPart(at, claim);
    case 'take-part':
      return takePart(at, claim);
    case 'report-finding':
      return reportFinding(at, claim);
    case 'decide-finding':
      return decideFinding(at, claim);
    case 'close-finding':
      return closeFinding(at, claim);
    case 'ask-change':
      return askChange(at, claim);
    case 'decide-change':
      return decideChange(at, claim);
    case 'place-hold':
      return placeHold(at, claim);
    case 'release-hold':
      return releaseHold(at, claim);
    case 'choose-option':
      return chooseOption(at, claim);
    case 'assign':
      return assign(at, claim);
    case 'add-note':
      return accept({ type: 'note-added', of: claim.of, text: claim.text });
    case 'add-photo':
      return addPhoto(at, claim);
    case 'strike-signature':
      return strike(at, claim);
    case 'advance-car':
      return advance(at, claim);
    case 'send-back':
      return sendBack(at, claim);
    case 'deliver-car':
      return deliver(at);
    case 'pick-kit':
    case 'empty-kit':
    case 'report-kit-line':
      return decideKit(at, stock, claim);
    case 'record-donor':
      return recordDonor(at, claim);
    case 'grade-parts':
    case 'send-parts':
    case 'return-parts':
      return decideComponents(at, claim);
  }
};

const onJoint = (at: Case, key: string, judge: (joint: JointCase) => Decision): Decision => {
  const joint = at.plan.joints.get(key);
  return joint === undefined
    ? deny(refuse('unknown-thing', { what: 'joint', key }))
    : judge(jointCase(at, joint));
};
