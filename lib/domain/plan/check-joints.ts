/** What a joint must say of itself: its value, where the value is from, and who sees to it. */
import { dimensionOf } from '@/lib/domain/base/units';
import type { Performers } from './check-performers';
import type { PlanReading } from './check-reading';
import { dueLevelOf } from './compile-operations';
import type { JointEntry } from './document';
import { problem } from './problem';
import type { Problem, ProblemPath } from './problem';
import { parseSpecification, parseWindow } from './window';

export const checkJoints = (reading: PlanReading, performers: Performers): Problem[] =>
  [...reading.joints.values()].flatMap(({ key, entry }) => {
    const path = ['joints', key];
    return [
      ...checkTorque(entry, path),
      ...checkAngle(entry, path),
      ...checkSequence(entry, path),
      ...checkSource(entry, path),
      ...checkPattern(entry, path),
      ...checkHardware(entry, path),
      ...checkVerify(entry, path),
      ...checkWorked(entry, path, performers, key),
    ];
  });

const checkTorque = (joint: JointEntry, path: ProblemPath): readonly Problem[] => {
  const { torque, method } = joint;
  const at = [...path, 'torque'];
  // A sequence has its windows in its steps.
  if (torque === undefined && method === 'sequence') return [];
  if (torque === undefined) return [problem(method === 'firm' ? 'firm-with-value' : 'torque-missing', at)];
  const specification = parseSpecification(torque);
  if (specification === null) return [problem('specification-unreadable', at, { text: torque })];
  switch (specification.kind) {
    case 'no-value-published':
      return method === 'firm' ? [] : [problem('no-value-not-firm', at, { method })];
    case 'no-value-yet': {
      if (method === 'firm') return [problem('firm-with-value', at)];
      const rank = dueLevelOf(joint) === 'snug' ? 'hint' : 'gap';
      return [problem('no-value-yet', at, { dueLevel: dueLevelOf(joint) }, { rank })];
    }
    case 'window': {
      if (method === 'firm') return [problem('firm-with-value', at)];
      const { unit } = specification.window;
      return dimensionOf(unit) === 'torque' ? [] : [problem('torque-unit', at, { text: torque, unit })];
    }
  }
};

const checkAngle = ({ angle, method }: JointEntry, path: ProblemPath): readonly Problem[] => {
  const at = [...path, 'angle'];
  if (angle === undefined) return method === 'angle' ? [problem('angle-missing', at)] : [];
  const window = parseWindow(angle);
  if (window === null) return [problem('window-unreadable', at, { text: angle })];
  const dimension = dimensionOf(window.unit);
  // Turns are counted, and a nut turner's sheet may count them: `0.25 ± 0.05 turn`.
  const isAngle = dimension === 'angle' || dimension === 'turns';
  return isAngle ? [] : [problem('angle-unit', at, { text: angle, unit: window.unit })];
};

const checkSequence = ({ sequence, method }: JointEntry, path: ProblemPath): readonly Problem[] => {
  const steps = Object.entries(sequence ?? {});
  if (steps.length === 0 && method === 'sequence')
    return [problem('sequence-missing', [...path, 'sequence'])];
  return steps.flatMap(([step, text]) =>
    text.trim() === 'done' || parseWindow(text) !== null
      ? []
      : [problem('window-unreadable', [...path, 'sequence', step], { text })],
  );
};

/** Whoever doubts a value must be able to look it up. */
const checkSource = (joint: JointEntry, path: ProblemPath): readonly Problem[] => {
  if (joint.source !== undefined && joint.source.trim() !== '') return [];
  const texts: readonly (string | undefined)[] = [
    joint.torque,
    joint.angle,
    ...Object.values(joint.sequence ?? {}),
  ];
  const valued = texts.find((text) => text !== undefined && parseWindow(text) !== null);
  return valued === undefined
    ? []
    : [problem('torque-without-source', [...path, 'source'], { text: valued })];
};

const checkPattern = ({ pattern, fasteners }: JointEntry, path: ProblemPath): readonly Problem[] => {
  if (pattern === undefined || typeof pattern === 'string') return [];
  const isEachOnce =
    pattern.length === fasteners &&
    new Set(pattern).size === fasteners &&
    pattern.every((each) => Number.isInteger(each) && each >= 1 && each <= fasteners);
  if (isEachOnce) return [];
  return [problem('pattern-not-each-once', [...path, 'pattern'], { fasteners: String(fasteners) })];
};

const checkHardware = ({ hardware, fasteners }: JointEntry, path: ProblemPath): readonly Problem[] =>
  Object.entries(hardware ?? {}).flatMap(([item, line]) => {
    const quantity = typeof line === 'number' ? line : line.quantity;
    const isForJoint = typeof line !== 'number' && line.per === 'joint';
    if (isForJoint || quantity % fasteners === 0) return [];
    const details = { item, quantity: String(quantity), fasteners: String(fasteners) };
    return [problem('hardware-uneven', [...path, 'hardware', item], details)];
  });

const checkVerify = (joint: JointEntry, path: ProblemPath): readonly Problem[] => {
  if (joint.verify !== undefined) return [];
  if (joint.critical === true) return [problem('critical-without-verify', [...path, 'verify'])];
  return joint.dueLevel === 'verified' ? [problem('verified-without-verify', [...path, 'verify'])] : [];
};

const checkWorked = (
  joint: JointEntry,
  path: ProblemPath,
  performers: Performers,
  key: string,
): readonly Problem[] => {
  const anyWork = performers.doing(['snug', 'final', 'retorque', 'recheck', 'open'], key);
  if (anyWork.length === 0) return [problem('joint-not-worked', path, { joint: key })];
  const dueLevel = dueLevelOf(joint);
  if (performers.ofJoint(key, dueLevel).length > 0) return [];
  const verb = dueLevel === 'snug' ? 'snug' : 'final';
  return [problem('joint-never-there', path, { joint: key, dueLevel, verb })];
};
