/** Bad news about a joint. Never refused for the state of things: what happened, happened. */
import { parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { levelOf } from '@/lib/domain/car/joint';
import type { DoubtCause } from '@/lib/domain/base/vocabulary';
import { runningOpening } from '@/lib/domain/car/work';
import type { CarPayload } from '@/lib/domain/events';
import { deliveredAt } from '@/lib/domain/torque/delivered';
import { accept, unknown } from './case';
import type { CarClaimOf, Decision } from './case';
import { doubt, jointOpened } from './consequences';
import { openFinding } from './findings';
import type { JointCase } from './joints';

export const open = (at: JointCase, claim: CarClaimOf<'open-joint'>): Decision => {
  const all = at.joint.order;
  const fasteners = claim.fasteners === undefined || claim.fasteners.length === 0 ? all : claim.fasteners;
  const strange = fasteners.find((each) => !all.includes(each));
  if (strange !== undefined) return unknown('fastener', `${at.joint.stateKey} no. ${String(strange)}`);
  return accept(
    ...jointOpened(
      at,
      at.joint,
      [...fasteners].sort((a, b) => a - b),
      runningOpening(at.car, at.joint),
      {
        reason: claim.reason ?? null,
        namedCycle: claim.cycle ?? null,
      },
    ),
  );
};

/** A second person does not agree: the joint is doubted until torqued again, and a finding says why. */
export const reject = (at: JointCase, claim: CarClaimOf<'reject-joint'>): Decision =>
  accept(
    ...doubted(at, claim.cycle, 'rejected', `rejected by ${at.facts.actor}: ${claim.reason}`, null),
    aboutJoint(at, claim.cycle, claim.reason),
  );

export const reportDisturbed = (at: JointCase, claim: CarClaimOf<'report-disturbed'>): Decision => {
  const which = claim.fasteners === undefined ? '' : ` at no. ${claim.fasteners.join(', ')}`;
  const text = claim.cause === 'moved' ? `moved when tried again${which}` : `stripe broken${which}`;
  return accept(
    ...doubted(at, claim.cycle, claim.cause, text, claim.fasteners ?? null),
    aboutJoint(at, claim.cycle, text),
  );
};

const aboutJoint = (at: JointCase, named: number | undefined, text: string): CarPayload =>
  openFinding(at, { kind: 'joint', key: at.joint.stateKey }, text, null, named ?? at.row.cycle);

const isOfThisCycle = (at: JointCase, named: number | undefined): boolean =>
  named === undefined || named === at.row.cycle;

/** Nothing that is not final is doubted: it promises nothing yet. News of an earlier cycle doubts nothing that is there now. */
const doubted = (
  at: JointCase,
  named: number | undefined,
  cause: DoubtCause,
  because: string,
  fasteners: readonly number[] | null,
): readonly CarPayload[] =>
  isOfThisCycle(at, named) && isAtLevel(levelOf(at.row), 'final')
    ? [
        {
          type: 'joint-doubted',
          joint: at.joint.stateKey,
          cycle: at.row.cycle,
          doubt: doubt(at, at.joint, cause, 'retorque', because, fasteners),
        },
      ]
    : [];

/** Stored the moment it is entered (D24). One of an earlier cycle is on record and doubts nothing that is there now. */
export const reportOverTorque = (at: JointCase, claim: CarClaimOf<'report-over-torque'>): Decision => {
  const { joint, row } = at;
  if (!joint.order.includes(claim.fastener))
    return unknown('fastener', `${joint.stateKey} no. ${String(claim.fastener)}`);
  const because = `no. ${String(claim.fastener)} got ${claim.reading} ${claim.unit}`;
  const events: CarPayload[] = [
    {
      type: 'joint-over-torqued',
      joint: joint.stateKey,
      cycle: claim.cycle ?? row.cycle,
      fastener: claim.fastener,
      reading: claim.reading,
      unit: claim.unit,
      delivered: deliveredText(at, claim),
      tool: claim.tool ?? null,
    },
  ];
  if (isOfThisCycle(at, claim.cycle))
    events.push({
      type: 'joint-doubted',
      joint: joint.stateKey,
      cycle: row.cycle,
      doubt: doubt(at, joint, 'over-torque', 'renew', because, [claim.fastener]),
    });
  events.push(aboutJoint(at, claim.cycle, `over-torqued: ${because}`));
  return accept(...events);
};

const deliveredText = (at: JointCase, claim: CarClaimOf<'report-over-torque'>): string | null => {
  const tool = claim.tool === undefined ? undefined : at.facts.tools[claim.tool];
  const adapter = claim.adapter === undefined ? null : (at.facts.adapters[claim.adapter] ?? null);
  const shown = parseDecimal(claim.reading);
  if (shown === null || at.joint.specification.kind !== 'window') return null;
  const got = tool === undefined ? shown : deliveredAt(shown, tool, adapter);
  const { unit } = at.joint.specification.window;
  const value = got === null ? null : convert(got, claim.unit, unit);
  return value === null ? null : `${toDecimalText(value)} ${unit}`;
};
