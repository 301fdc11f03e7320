/** The car as a whole: move it, send it back, deliver it, give its work to people, strike a signature. */
import type { FormOf, OptionGroup } from '@/components/act/form';
import { list, text } from '@/components/act/form';
import type { Desk } from '@/lib/wire/views/desk';

type WholeAct = 'advance-car' | 'send-back' | 'deliver-car' | 'assign' | 'strike-signature';

const stageName = (key: string, desk: Desk): string => desk.stages[key]?.name ?? key;

const advance: FormOf = ({ key }, desk) => ({
  title: `Move to ${stageName(key, desk)}`,
  button: `Move to ${stageName(key, desk)}`,
  tone: 'main',
  fields: [],
  says: `${desk.chassis} passes gate ${String(desk.stage + 1)} and goes to ${stageName(key, desk)}.`,
  brings: [],
  missing: null,
  claim: () => ({ type: 'advance-car', car: desk.car, to: key }),
});

const deliver: FormOf = (_act, desk) => ({
  title: 'Deliver',
  button: 'Deliver the car',
  tone: 'main',
  fields: [],
  says: `${desk.chassis} is delivered. Its record is closed.`,
  brings: [],
  missing: null,
  claim: () => ({ type: 'deliver-car', car: desk.car }),
});

const sendBack: FormOf = ({ key }, desk, values) => {
  const to = text(values, 'to') || key;
  const reason = text(values, 'reason');
  const earlier = Object.entries(desk.stages).filter(([, { number }]) => number <= desk.stage);
  const from = desk.stages[to]?.number ?? 1;
  return {
    title: 'Send back',
    button: `Back to ${stageName(to, desk)}`,
    tone: 'stop',
    fields: [
      {
        kind: 'pick',
        name: 'to',
        label: 'To which stage',
        wanted: true,
        groups: [
          {
            label: 'Earlier stages',
            options: earlier
              .map(([value, { number, name }]) => ({ value, label: `${String(number)} ${name}` }))
              .reverse(),
          },
        ],
      },
      { kind: 'text', name: 'reason', label: 'Why', wanted: true },
    ],
    says: `${desk.chassis} goes back to ${stageName(to, desk)}.`,
    brings: [
      `${from === desk.stage + 1 ? 'Gate' : 'Gates'} ${span(from, desk.stage + 1)} asked again. No joint changes: what is verified stays so.`,
    ],
    missing: reason === '' ? 'Say why.' : null,
    claim: () => ({ type: 'send-back', car: desk.car, to, reason }),
  };
};

const span = (from: number, to: number): string =>
  from === to ? `${String(to)} is` : `${String(from)} to ${String(to)} are`;

/** A job's people, or a stage's: its jobs default to them. */
const assign: FormOf = ({ key }, desk, values) => {
  const stage = /^stage:(.+)$/.exec(key)?.[1];
  const what = stage === undefined ? 'this job' : `the work of ${stageName(stage, desk)}`;
  const before = desk.given[key] ?? [];
  const people = values['people'] === undefined ? before : list(values, 'people');
  const names = desk.people.filter(({ id }) => people.includes(id)).map(({ name }) => name);
  return {
    title: stage === undefined ? 'Give it to' : `Crew of ${stageName(stage, desk)}`,
    button: 'Give it',
    tone: 'plain',
    fields: [
      {
        kind: 'many',
        name: 'people',
        label: 'Who',
        start: before,
        options: desk.people.map(({ id, name }) => ({ value: id, label: name })),
      },
    ],
    says: `${what} is given to ${names.length === 0 ? 'nobody' : names.join(', ')}.`,
    brings: [],
    missing: null,
    // Who came and who went since this was opened: what another lead does meanwhile stays.
    claim: () => ({
      type: 'assign',
      car: desk.car,
      job: key,
      add: people.filter((id) => !before.includes(id)),
      remove: before.filter((id) => !people.includes(id)),
    }),
  };
};

const strike: FormOf = (_act, desk, values) => {
  const id = text(values, 'signature');
  const signature = desk.signatures[id];
  const reason = text(values, 'reason');
  return {
    title: 'Strike a signature',
    button: 'Strike',
    tone: 'stop',
    fields: [
      { kind: 'pick', name: 'signature', label: 'Which', wanted: true, groups: signatureGroups(desk) },
      { kind: 'text', name: 'reason', label: 'Why it was wrong', wanted: true },
    ],
    says: signature === undefined ? '' : `${signature.says}, ${signature.when}: this signature was wrong.`,
    brings:
      signature === undefined
        ? []
        : [...signature.striking, 'It stays readable, struck through; nothing is used up by it.'],
    missing: id === '' ? 'Say which signature.' : reason === '' ? 'Say why it was wrong.' : null,
    claim: () => ({ type: 'strike-signature', car: desk.car, signature: id, reason }),
  };
};

/** One's own first. */
const signatureGroups = (desk: Desk): readonly OptionGroup[] => {
  const option = ([value, { says, when, by }]: readonly [string, Desk['signatures'][string]]) => ({
    value,
    label: `${says}, ${when}, ${desk.people.find(({ id }) => id === by)?.name ?? by}`,
  });
  const all = Object.entries(desk.signatures);
  return [
    { label: 'Mine', options: all.filter(([, { by }]) => by === desk.me.id).map(option) },
    { label: 'Others’', options: all.filter(([, { by }]) => by !== desk.me.id).map(option) },
  ].filter(({ options }) => options.length > 0);
};

export const wholeForms: Readonly<Record<WholeAct, FormOf>> = {
  'advance-car': advance,
  'send-back': sendBack,
  'deliver-car': deliver,
  assign,
  'strike-signature': strike,
};
