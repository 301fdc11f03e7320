/** Snug, verify, reject, try again; opened, stripe broken, over-torqued. Final has a sheet of its own. */
import type { FieldSpec, FormOf, OptionGroup, Values } from '@/components/act/form';
import { called, list, optional, text } from '@/components/act/form';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { VerifyMethod } from '@/lib/domain/base/vocabulary';
import type { ActRef, Desk, JointThing, ToolChoice } from '@/lib/wire/views/desk';
import { lotWords } from '@/lib/wire/views/lot-words';
import type { HardwareView } from '@/lib/wire/views/sign-off';

type JointAct =
  | 'snug-joint'
  | 'verify-joint'
  | 'reject-joint'
  | 'recheck-joint'
  | 'open-joint'
  | 'report-disturbed';

const METHODS: Readonly<Record<VerifyMethod, string>> = {
  witnessed: 'stood by and saw it torqued',
  're-applied': 'applied the tool again, and nothing moved',
  seen: 'looked at stripe and hardware',
};

interface Meant {
  readonly key: string;
  readonly joint: JointThing | undefined;
  readonly name: string;
}

/** The joint that the act is about; where it is about any, the one that was picked. */
const meant = ({ key }: ActRef, desk: Desk, values: Values): Meant => {
  const picked = key === '' ? text(values, 'joint') : key;
  const joint = desk.joints[picked];
  return { key: picked, joint, name: called(picked, joint?.name) };
};

/** Joints by the stage whose gate asks for them, those that hold something first. */
export const jointGroups = (
  desk: Desk,
  isIn: (joint: JointThing) => boolean = () => true,
): readonly OptionGroup[] =>
  Object.values(desk.stages)
    .map(({ number, name }) => ({
      label: `${String(number)} ${name}`,
      options: Object.entries(desk.joints)
        .filter(([, joint]) => joint.stage === number - 1 && isIn(joint))
        .map(([value, joint]) => ({ value, label: `${called(value, joint.name)}: ${levelText(joint)}` })),
    }))
    .filter(({ options }) => options.length > 0);

const levelText = ({ level, doubted }: JointThing): string => (doubted ? `${level}, in doubt` : level);

const pickJoint = (act: ActRef, desk: Desk, isIn?: (joint: JointThing) => boolean): readonly FieldSpec[] =>
  act.key === ''
    ? [{ kind: 'pick', name: 'joint', label: 'Joint', groups: jointGroups(desk, isIn), wanted: true }]
    : [];

const cycleOf = (joint: JointThing | undefined): { readonly cycle?: number } =>
  joint === undefined ? {} : { cycle: joint.cycle };

const WHICH = 'Which fasteners';

const fastenersField = (joint: JointThing | undefined, hint: string): readonly FieldSpec[] =>
  joint === undefined || joint.fasteners.length < 2
    ? []
    : [{ kind: 'fasteners', name: 'fasteners', label: WHICH, hint, numbers: joint.fasteners }];

const fastenersOf = (values: Values): { readonly fasteners?: readonly number[] } => {
  const chosen = list(values, 'fasteners').map(Number);
  return chosen.length === 0 ? {} : { fasteners: chosen };
};

const open: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const spent = joint?.opening ?? [];
  return {
    title: 'Opened',
    button: 'Opened',
    tone: 'stop',
    fields: [
      ...pickJoint(act, desk),
      ...fastenersField(joint, 'none marked means all of them'),
      { kind: 'text', name: 'reason', label: 'Why', wanted: false },
    ],
    says: `${name} was loosened.`,
    brings: joint === undefined ? [] : [openedText(joint), ...spent],
    missing: key === '' ? 'Say which joint.' : null,
    claim: () => ({
      type: 'open-joint',
      car: desk.car,
      joint: key,
      ...cycleOf(joint),
      ...fastenersOf(values),
      ...optional('reason', text(values, 'reason')),
    }),
  };
};

const openedText = (joint: JointThing): string =>
  joint.level === 'open'
    ? 'It is open already; that it was loosened once more is kept.'
    : `It is open from now on, and was ${joint.level}. It is brought back as a job of its own.`;

const disturbed: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const cause = text(values, 'cause') === 'moved' ? 'moved' : 'stripe-broken';
  return {
    title: 'Stripe broken',
    button: cause === 'moved' ? 'It moved' : 'Stripe broken',
    tone: 'stop',
    fields: [
      ...pickJoint(act, desk, ({ level }) => level === 'final' || level === 'verified'),
      {
        kind: 'choice',
        name: 'cause',
        label: 'What was seen',
        start: cause,
        options: [
          { value: 'stripe-broken', label: 'The stripe is broken' },
          { value: 'moved', label: 'It moved when tried again' },
        ],
      },
      ...fastenersField(joint, 'none marked means the whole joint'),
    ],
    says: `${name}: ${cause === 'moved' ? 'it moved when tried again' : 'the stripe is broken'}.`,
    brings: joint === undefined ? [] : ['It is in doubt until it is torqued again, and a finding is opened.'],
    missing: key === '' ? 'Say which joint.' : null,
    claim: () => ({
      type: 'report-disturbed',
      car: desk.car,
      joint: key,
      cause,
      ...cycleOf(joint),
      ...fastenersOf(values),
    }),
  };
};

const toolField = (tools: readonly ToolChoice[]): FieldSpec => ({
  kind: 'pick',
  name: 'tool',
  label: 'Tool',
  hint: 'set to the low end of the window',
  wanted: true,
  groups: [{ label: 'Torque tools', options: tools.map(toolOption) }],
});

export const toolOption = ({ id, name, whyNot }: ToolChoice): OptionGroup['options'][number] => ({
  value: id,
  label: `${id} ${name}`,
  ...(whyNot === undefined ? {} : { barred: whyNot }),
});

const verify: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const asked = joint?.work?.verify ?? null;
  const method = asked ?? methodIn(text(values, 'method'));
  const takesTool = method === 're-applied' && joint?.work?.takesTool === true;
  const tool = text(values, 'tool');
  return {
    title: 'Verify',
    button: 'Verify',
    tone: 'main',
    fields: [...(asked === null ? [methodField] : []), ...(takesTool ? [toolField(joint.work.tools)] : [])],
    says: `${name} is as it must be: a second person ${METHODS[method]}.`,
    brings: [],
    missing: takesTool && tool === '' ? 'Say which tool was applied again.' : null,
    claim: () => ({
      type: 'verify-joint',
      car: desk.car,
      joint: key,
      method,
      ...cycleOf(joint),
      ...(takesTool ? { tool } : {}),
    }),
  };
};

const methodIn = (value: string): VerifyMethod =>
  value === 'witnessed' || value === 're-applied' ? value : 'seen';

const methodField: FieldSpec = {
  kind: 'choice',
  name: 'method',
  label: 'How',
  start: 'seen',
  options: (['seen', 'witnessed', 're-applied'] as const).map((value) => ({ value, label: METHODS[value] })),
};

const reject: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const reason = text(values, 'reason');
  return {
    title: 'Reject',
    button: 'Reject',
    tone: 'stop',
    fields: [{ kind: 'text', name: 'reason', label: 'What is wrong', wanted: true }],
    says: `${name} is not as it must be.`,
    brings: ['It is in doubt until it is torqued again, and a finding is opened.'],
    missing: reason === '' ? 'Say what is wrong.' : null,
    claim: () => ({ type: 'reject-joint', car: desk.car, joint: key, reason, ...cycleOf(joint) }),
  };
};

const recheck: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const takesTool = joint?.work?.takesTool === true;
  const tool = text(values, 'tool');
  return {
    title: 'Nothing moved',
    button: 'Nothing moved',
    tone: 'main',
    fields: takesTool ? [toolField(joint.work.tools)] : [],
    says: `${name} was tried again with a good tool, and nothing moved.`,
    brings: [],
    missing: takesTool && tool === '' ? 'Say which tool it was tried with.' : null,
    claim: () => ({
      type: 'recheck-joint',
      car: desk.car,
      joint: key,
      ...cycleOf(joint),
      ...(takesTool ? { tool } : {}),
    }),
  };
};

const snug: FormOf = (act, desk, values) => {
  const { key, joint, name } = meant(act, desk, values);
  const lines = joint?.work?.hardware ?? [];
  return {
    title: 'Run up snug',
    button: 'Snug',
    tone: 'main',
    fields: lines.map((line) => ({
      kind: 'hardware',
      name: hardwareName(line),
      label: `${String(line.quantity)} × ${line.name}`,
      hint: line.rule,
      line,
    })),
    says: `${name} is fitted and run up to contact; it says nothing of torque.${lotsSaid(lines, values)}`,
    brings: [],
    missing: null,
    claim: () => {
      const hardware = lines.flatMap((line) => claimed(line, hardwareValue(line, values)));
      return {
        type: 'snug-joint',
        car: desk.car,
        joint: key,
        ...cycleOf(joint),
        ...(hardware.length === 0 ? {} : { hardware }),
      };
    },
  };
};

/** Which lots the signature names. */
const lotsSaid = (lines: readonly HardwareView[], values: Values): string => {
  const said = lines.flatMap((line) => {
    const words = lotWords(line, claimed(line, hardwareValue(line, values)));
    return words === '' ? [] : [`${line.name}, ${words}`];
  });
  return said.length === 0 ? '' : ` In it: ${said.join('; ')}.`;
};

export const hardwareName = ({ item }: HardwareView): string => `hardware:${item}`;

/** From the lot that is to be taken first, unless somebody says otherwise. */
export const hardwareValue = (line: HardwareView, values: Values): string =>
  text(values, hardwareName(line)) || (line.proposed.length === 0 ? 'plan' : 'proposed');

/** `proposed`, `plan`, `lot L-1`, `again`, `instead ITEM`, `instead ITEM L-1`. */
const claimed = (line: HardwareView, value: string): readonly FittedClaim[] => {
  const { item } = line;
  const [what = '', first = '', second] = value.split(' ');
  switch (what) {
    case 'proposed':
      return line.proposed;
    case 'lot':
      return [{ item, lot: first }];
    case 'again':
      return [{ item, reused: true }];
    case 'instead':
      return [{ item: first, insteadOf: item, ...(second === undefined ? {} : { lot: second }) }];
    default:
      return [];
  }
};

export const jointForms: Readonly<Record<JointAct, FormOf>> = {
  'snug-joint': snug,
  'verify-joint': verify,
  'reject-joint': reject,
  'recheck-joint': recheck,
  'open-joint': open,
  'report-disturbed': disturbed,
};
