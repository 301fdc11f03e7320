/** The lines of an operation's body: what finishing it means, how far each is, and what can be claimed about it. */
import { levelOf } from '@/lib/domain/car/joint';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import { bodyUnmet } from '@/lib/domain/decide/body';
import type { BodyRequirement, CompiledOperation } from '@/lib/domain/plan/compiled';
import type { BodyRow, RowSign } from '@/lib/wire/views/car';
import type { ActRef } from '@/lib/wire/views/desk';
import { anchorOf } from '@/lib/wire/views/said-line';
import { checkActs } from './check-acts';
import { sheetOf } from './joint-rows';
import type { Seen } from './seen';
import type { Acts } from './who-may';

/** `anchors`: those that have their place elsewhere on the page already. */
export const bodyRows = (
  seen: Seen,
  acts: Acts,
  operation: CompiledOperation,
  anchors: ReadonlySet<string>,
): readonly BodyRow[] => {
  const row = seen.car.operations[operation.stateKey];
  const run: RunRef = { operation: operation.stateKey, run: row?.run ?? 1 };
  const isRunning = row?.status === 'running';
  return operation.body.map((line) => {
    const isDone = isLineDone(seen, operation, run, line);
    const check = line.verb === 'check' ? anchorOf('check', line.check) : null;
    return {
      id: check === null || anchors.has(check) ? null : check,
      sign: signOf(seen, line, isDone),
      name: wordsOf(seen, line),
      isDone,
      acts: isRunning && !isDone ? actsOf(seen, acts, operation, line) : [],
      href: isDone ? null : hrefOf(seen, line),
    };
  });
};

/** What finishing does by itself counts as done once it is so on the car. */
const isLineDone = (
  seen: Seen,
  operation: CompiledOperation,
  run: RunRef,
  line: BodyRequirement,
): boolean => {
  const { car } = seen;
  switch (line.verb) {
    case 'place':
      return Object.values(car.stopgaps).some(
        (each) => each.stopgap === line.stopgap && each.removed < each.placed,
      );
    case 'set':
      return car.conditions[line.condition]?.value === true;
    case 'clear':
      return car.conditions[line.condition]?.value !== true;
    default:
      return bodyUnmet(seen.at, operation, run, [line]).length === 0;
  }
};

const wordsOf = ({ words: { thing, condition } }: Seen, line: BodyRequirement): string => {
  switch (line.verb) {
    case 'snug':
      return `${thing(line.joint)}: run up snug`;
    case 'final':
      return `${thing(line.joint)}: to final`;
    case 'retorque':
      return `${thing(line.joint)}: torque again in full`;
    case 'recheck':
      return `${thing(line.joint)}: try again`;
    case 'open':
      return `${thing(line.joint)}: open`;
    case 'check':
      return thing(line.check);
    case 'place':
      return `${thing(line.stopgap)}: goes in`;
    case 'out':
      return `${thing(line.stopgap)}: comes out`;
    case 'set':
      return `${condition(line.condition)}: becomes so when this is finished`;
    case 'clear':
      return `${condition(line.condition)}: ends when this is finished`;
    case 'fit':
      return `${thing(line.part)}: fit`;
    case 'photo':
      return `Photograph: ${line.slot}`;
  }
};

const signOf = (seen: Seen, line: BodyRequirement, isDone: boolean): RowSign => {
  switch (line.verb) {
    case 'snug':
    case 'final':
    case 'retorque':
    case 'recheck':
    case 'open':
      return levelOf(seen.car.joints[line.joint]);
    case 'check':
      return isDone ? 'passed' : seen.car.checks[line.check]?.status === 'failed' ? 'failed' : 'due';
    case 'place':
    case 'out':
      return 'stopgap';
    case 'fit':
      return isDone ? 'passed' : 'owed';
    case 'photo':
      return 'photo';
    case 'set':
    case 'clear':
      return isDone ? 'passed' : 'due';
  }
};

const hrefOf = (seen: Seen, line: BodyRequirement): string | null => {
  switch (line.verb) {
    case 'snug':
    case 'final':
    case 'retorque':
    case 'recheck':
      return sheetOf(seen, line.joint);
    default:
      return null;
  }
};

const actsOf = (
  seen: Seen,
  acts: Acts,
  operation: CompiledOperation,
  line: BodyRequirement,
): readonly ActRef[] => {
  const { car } = seen;
  switch (line.verb) {
    case 'snug':
    case 'final':
      return levelOf(car.joints[line.joint]) === 'open' ? acts.all(['snug-joint'], 'joint', line.joint) : [];
    case 'retorque':
      return [];
    case 'recheck':
      return acts.all(['recheck-joint', 'report-disturbed'], 'joint', line.joint);
    case 'open':
      return acts.all(['open-joint'], 'joint', line.joint);
    case 'check':
      return checkActs(seen, acts, line.check);
    case 'place':
      return acts.all(['place-stopgap'], 'stopgap', line.stopgap);
    case 'out':
      return Object.entries(car.stopgaps)
        .filter(([, each]) => each.stopgap === line.stopgap && each.removed < each.placed)
        .map(([id]) => acts.act('remove-stopgap', 'stopgap', id));
    case 'set':
      return acts.all(['set-condition'], 'condition', line.condition);
    case 'clear':
      return acts.all(['clear-condition'], 'condition', line.condition);
    case 'fit':
      return acts.all(
        [car.parts[line.part]?.state === 'present' ? 'fit-part' : 'receive-part'],
        'part',
        line.part,
      );
    case 'photo':
      return acts.all(['add-photo'], 'operation', `${operation.stateKey}/${line.slot}`);
  }
};
