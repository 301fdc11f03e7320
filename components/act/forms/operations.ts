/** Start, join, step out, pause, resume, take over, finish. */
import type { FieldSpec, FormOf, FormSpec, Values } from '@/components/act/form';
import { called, optional, text } from '@/components/act/form';
import type { UsedLot } from '@/lib/domain/commands';
import type { ActRef, Desk, UsesUp } from '@/lib/wire/views/desk';

type OperationAct =
  | 'start-operation'
  | 'join-operation'
  | 'pause-operation'
  | 'leave-operation'
  | 'resume-operation'
  | 'take-over-operation'
  | 'finish-operation';

interface Wording {
  readonly title: string;
  readonly button: string;
  readonly tone: FormSpec['tone'];
  readonly says: (thing: string) => string;
  readonly brings?: readonly string[];
}

const plain =
  (type: 'resume-operation' | 'take-over-operation', wording: Wording): FormOf =>
  (act, desk) => {
    const thing = thingOf(act, desk);
    const { title, button, tone, says, brings = [] } = wording;
    return {
      title,
      button,
      tone,
      fields: [],
      says: says(thing),
      brings,
      missing: null,
      claim: () => ({ type, car: desk.car, operation: act.key, ...runOf(type, act, desk) }),
    };
  };

const thingOf = ({ key }: ActRef, desk: Desk): string => called(key, desk.operations[key]?.name);

/** A finish is for the run on the screen, and for no later one (D2). */
const runOf = (type: OperationAct, { key }: ActRef, desk: Desk): { readonly run?: number } => {
  const run = desk.operations[key]?.run;
  return run === undefined || (type !== 'start-operation' && type !== 'finish-operation') ? {} : { run };
};

const READ = 'read';

/** The usual caution stands before the first step, and Start waits for it to be read (design 11). */
const start: FormOf = (act, desk, values) => {
  const operation = desk.operations[act.key];
  const cautions = (operation?.cautions ?? []).flatMap((key) => desk.cautions[key] ?? []);
  const fields: readonly FieldSpec[] =
    cautions.length === 0 ? [] : [{ kind: 'cautions', name: READ, label: 'Before the first step', cautions }];
  return {
    title: 'Start',
    button: 'Start',
    tone: 'main',
    fields,
    says: `${thingOf(act, desk)} begins now.`,
    brings:
      operation?.irreversible === true
        ? ['This can’t be undone: what is cut, drilled or stamped stays so.']
        : [],
    missing: cautions.length > 0 && !isRead(values) ? 'Read the cautions and tick them first.' : null,
    claim: () => ({
      type: 'start-operation',
      car: desk.car,
      operation: act.key,
      ...runOf('start-operation', act, desk),
    }),
  };
};

const isRead = (values: Values): boolean => text(values, READ) === 'yes';

const LEFT_AS: FieldSpec = {
  kind: 'text',
  name: 'leftAs',
  label: 'Left as',
  hint: 'what whoever goes on must know',
  wanted: false,
};

const pause: FormOf = (act, desk, values) => ({
  title: 'Pause',
  button: 'Pause',
  tone: 'plain',
  fields: [LEFT_AS],
  says: `${thingOf(act, desk)} stops for now.`,
  brings: isShared(act, desk) ? ['It stops for everybody who is on it.'] : [],
  missing: null,
  claim: () => ({
    type: 'pause-operation',
    car: desk.car,
    operation: act.key,
    ...optional('leftAs', text(values, 'leftAs')),
  }),
});

const isShared = ({ key }: ActRef, desk: Desk): boolean => (desk.operations[key]?.present.length ?? 0) > 1;

/** One of several goes, and the others go on. */
const leave: FormOf = (act, desk, values) => ({
  title: 'Step out',
  button: 'Step out',
  tone: 'plain',
  fields: [LEFT_AS],
  says: `${thingOf(act, desk)} goes on without ${desk.me.name}.`,
  brings: [],
  missing: null,
  claim: () => ({
    type: 'leave-operation',
    car: desk.car,
    operation: act.key,
    ...optional('leftAs', text(values, 'leftAs')),
  }),
});

/** Who is on it already can't join: what is offered is that another one does, with their own PIN. */
const join: FormOf = (act, desk) => {
  const isOn = desk.operations[act.key]?.present.includes(desk.me.id) === true;
  return {
    title: isOn ? 'Another joins' : 'Join',
    button: isOn ? 'Another joins' : 'Join',
    tone: 'plain',
    fields: [],
    says: `Another pair of hands is on ${thingOf(act, desk)}.`,
    brings: [],
    missing: null,
    claim: () => ({ type: 'join-operation', car: desk.car, operation: act.key }),
  };
};

const lotName = ({ item }: UsesUp): string => `lot:${item}`;

/** `proposed`, `lot L-1`, `unsaid`. */
const lotValue = (use: UsesUp, values: Values): string =>
  text(values, lotName(use)) || (use.proposed.length === 0 ? 'unsaid' : 'proposed');

const lotsOf = (use: UsesUp, values: Values): readonly UsedLot[] => {
  const value = lotValue(use, values);
  if (value === 'proposed') return use.proposed;
  return value === 'unsaid' ? [] : [{ item: use.item, lot: value.slice('lot '.length) }];
};

/** `lot L-1`, `0.5 of lot L-1 and 0.25 of lot L-2`, `lot not said`. */
const lotsText = (lots: readonly UsedLot[]): string =>
  lots.length === 0
    ? 'lot not said'
    : lots
        .map(({ lot, quantity }) => (quantity === undefined ? `lot ${lot}` : `${quantity} of lot ${lot}`))
        .join(' and ');

/** Which lot a traced consumable came from: the one to be taken first, unless somebody says otherwise. */
const lotField = (use: UsesUp): FieldSpec => {
  const [only, ...more] = use.proposed;
  const own = more.length === 0 ? use.lots.find(({ id }) => id === only?.lot) : undefined;
  return {
    kind: 'choice',
    name: lotName(use),
    label: `${use.quantity} ${use.name}, used up`,
    start: lotValue(use, {}),
    options: [
      ...(only === undefined
        ? []
        : [
            {
              value: 'proposed',
              label: capital(lotsText(use.proposed)),
              hint: own?.says ?? 'to be taken first',
            },
          ]),
      ...use.lots
        .filter(({ id }) => id !== own?.id)
        .map(({ id, says, whyNot }) => ({
          value: `lot ${id}`,
          label: `Lot ${id}`,
          hint: says,
          ...(whyNot === null ? {} : { barred: whyNot }),
        })),
      { value: 'unsaid', label: 'Lot not said', hint: 'nobody could find it again if a lot turns out bad' },
    ],
  };
};

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

const finish: FormOf = (act, desk, values) => {
  const uses = desk.operations[act.key]?.uses ?? [];
  const used = uses.map((use) => `${use.quantity} ${use.name}, ${lotsText(lotsOf(use, values))}`).join('; ');
  return {
    title: 'Finish',
    button: 'Finish',
    tone: 'main',
    fields: uses.filter(({ lots }) => lots.length > 0).map(lotField),
    says: `${thingOf(act, desk)} is done, with everything that it means.${used === '' ? '' : ` Used up: ${used}.`}`,
    brings: [],
    missing: null,
    claim: () => {
      const lots = uses.flatMap((use) => lotsOf(use, values));
      return {
        type: 'finish-operation',
        car: desk.car,
        operation: act.key,
        ...runOf('finish-operation', act, desk),
        ...(lots.length === 0 ? {} : { lots }),
      };
    },
  };
};

export const operationForms: Readonly<Record<OperationAct, FormOf>> = {
  'start-operation': start,
  'pause-operation': pause,
  'leave-operation': leave,
  'join-operation': join,
  'resume-operation': plain('resume-operation', {
    title: 'Go on',
    button: 'Go on',
    tone: 'main',
    says: (thing) => `${thing} goes on.`,
  }),
  'take-over-operation': plain('take-over-operation', {
    title: 'Take over',
    button: 'Take over',
    tone: 'plain',
    says: (thing) => `Somebody else goes on with ${thing}.`,
  }),
  'finish-operation': finish,
};
