/** The joints of a car for the forms: all of them in brief, and with what tightening, verifying or trying again asks. */
import type { StateKey } from '@/lib/domain/base/vocabulary';
import { doubtsOf, levelOf } from '@/lib/domain/car/joint';
import { jointCase } from '@/lib/domain/decide/joints';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { toolViews } from '@/lib/server/queries/sign-off/tool-view';
import { hardwareViews } from '@/lib/server/queries/sign-off/hardware-view';
import type { Stores } from '@/lib/server/queries/sign-off/lot-choices';
import type { ActRef, JointThing, JointWork } from '@/lib/wire/views/desk';
import { foresee, linesBut } from './foresee';
import type { Seen } from './seen';

const ASKS_WORK: ReadonlySet<ActRef['type']> = new Set<ActRef['type']>([
  'snug-joint',
  'verify-joint',
  'recheck-joint',
]);

/** `acts`: those on the page, so that only the joints that are worked on bring tools and hardware. */
export const jointThings = (
  seen: Seen,
  acts: readonly ActRef[],
  stores: Stores,
): Readonly<Record<StateKey, JointThing>> => {
  const worked = new Set(acts.filter(({ type }) => ASKS_WORK.has(type)).map(({ key }) => key));
  return Object.fromEntries(
    seen.plan.all.joints
      .filter((joint) => joint.undecided.length === 0)
      .map((joint) => [joint.stateKey, jointThing(seen, joint, worked.has(joint.stateKey) ? stores : null)]),
  );
};

const jointThing = (seen: Seen, joint: CompiledJoint, stores: Stores | null): JointThing => {
  const { car, facts } = seen;
  const row = car.joints[joint.stateKey];
  const opening = row === undefined ? [] : openingLines(seen, joint.stateKey);
  return {
    name: seen.words.thing(joint.stateKey),
    stage: joint.due,
    level: levelOf(row),
    doubted: doubtsOf(row, facts).length > 0,
    cycle: row?.cycle ?? 1,
    fasteners: [...joint.order].sort((a, b) => a - b),
    ...(opening.length === 0 ? {} : { opening }),
    ...(stores === null ? {} : { work: jointWork(seen, joint, stores) }),
  };
};

/** What opening all of it uses up, doubts, ends and makes due again. */
const openingLines = (seen: Seen, key: StateKey): readonly string[] => {
  const events = foresee(seen, { type: 'open-joint', car: seen.car.id, joint: key });
  const opened = events?.find((event) => event.type === 'joint-opened');
  const counts = new Map<string, number>();
  for (const item of Object.values(opened?.spent ?? {}).flat()) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [
    ...[...counts].map(
      ([item, count]) => `${String(count)} × ${seen.words.thing(item)}: used up, new ones go in`,
    ),
    ...linesBut(seen, events, 'joint-opened'),
  ];
};

const jointWork = (seen: Seen, joint: CompiledJoint, stores: Stores): JointWork => {
  const at = jointCase(seen.at, joint);
  const entry = seen.plan.document.joints?.[joint.key];
  return {
    verify: joint.verify,
    takesTool: joint.method !== 'firm',
    tools: toolViews(at, entry?.slot ?? false, seen.spoken).map(({ tool, whyNotReapply }) => ({
      id: tool.id,
      name: tool.name,
      ...(whyNotReapply[0] === undefined ? {} : { whyNot: whyNotReapply[0] }),
    })),
    torque: entry?.torque ?? (joint.method === 'sequence' ? 'in steps' : ''),
    hardware: hardwareViews(at, seen.spoken, stores),
  };
};
