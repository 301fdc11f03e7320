/** Conditions, parts, options, remarks, photographs. */
import type { FieldSpec, FormOf } from '@/components/act/form';
import { called, list, optional, text } from '@/components/act/form';
import type { Desk } from '@/lib/wire/views/desk';
import { photoAct, unsentPhotos } from './photos';

type ThingAct =
  | 'set-condition'
  | 'clear-condition'
  | 'fit-part'
  | 'take-part'
  | 'choose-option'
  | 'add-note'
  | 'add-photo';

const conditionWords = (key: string, desk: Desk): string => {
  const name = desk.conditions[key]?.name;
  return name === undefined ? key : `${key.replaceAll('-', ' ')} (${name})`;
};

const setCondition: FormOf = ({ key }, desk, values) => {
  const reason = text(values, 'reason');
  return {
    title: 'It is so',
    button: 'It is so',
    tone: 'main',
    fields: [{ kind: 'text', name: 'reason', label: 'By what', wanted: true }],
    says: `${conditionWords(key, desk)} is so.`,
    brings: [],
    missing: reason === '' ? 'Say what brought it about.' : null,
    claim: () => ({ type: 'set-condition', car: desk.car, condition: key, reason }),
  };
};

const clearCondition: FormOf = (act, desk, values) => {
  const key = act.key === '' ? text(values, 'condition') : act.key;
  const condition = desk.conditions[key];
  const reason = text(values, 'reason');
  return {
    title: 'Not so any more',
    button: 'Not so any more',
    tone: 'stop',
    fields: [
      ...(act.key === '' ? [whichCondition(desk)] : []),
      { kind: 'text', name: 'reason', label: 'Why', wanted: true },
    ],
    says: `${conditionWords(key, desk)} is no longer so.`,
    brings: condition?.ending ?? [],
    missing: key === '' ? 'Say what is no longer so.' : reason === '' ? 'Say why.' : null,
    claim: () => ({ type: 'clear-condition', car: desk.car, condition: key, reason }),
  };
};

const whichCondition = (desk: Desk): FieldSpec => ({
  kind: 'pick',
  name: 'condition',
  label: 'What',
  wanted: true,
  groups: [
    {
      label: 'So now',
      options: Object.keys(desk.conditions)
        .filter((key) => desk.conditions[key]?.value === true)
        .map((value) => ({ value, label: conditionWords(value, desk) })),
    },
  ],
});

const fitPart: FormOf = ({ key }, desk) => ({
  title: 'Fitted',
  button: 'Fitted',
  tone: 'main',
  fields: [],
  says: `${called(key, desk.parts[key]?.name)} is on the car.`,
  brings: [],
  missing: null,
  claim: () => ({ type: 'fit-part', car: desk.car, part: key }),
});

const takePart: FormOf = (act, desk, values) => {
  const key = act.key === '' ? text(values, 'part') : act.key;
  const part = desk.parts[key];
  const reason = text(values, 'reason');
  return {
    title: 'Part taken',
    button: 'Taken off',
    tone: 'stop',
    fields: [
      ...(act.key === '' ? [whichPart(desk)] : []),
      ...(desk.cars.length === 0 ? [] : [forCar(desk)]),
      { kind: 'text', name: 'reason', label: 'Why', wanted: true },
    ],
    says: `${called(key, part?.name)} came off ${desk.chassis}.`,
    brings:
      key === '' ? [] : [...(part?.taking ?? []), 'It is owed to this car until another one is fitted.'],
    missing: key === '' ? 'Say which part.' : reason === '' ? 'Say why.' : null,
    claim: () => ({
      type: 'take-part',
      car: desk.car,
      part: key,
      reason,
      ...optional('takenFor', text(values, 'takenFor')),
    }),
  };
};

const whichPart = (desk: Desk): FieldSpec => ({
  kind: 'pick',
  name: 'part',
  label: 'Part',
  wanted: true,
  groups: (
    [
      ['fitted', 'Fitted'],
      ['present', 'Here'],
      ['absent', 'Not here'],
      ['taken', 'Taken off already'],
      ['out', 'Out to be worked on'],
      ['back', 'Back, not looked over'],
    ] as const
  )
    .map(([state, label]) => ({
      label,
      options: Object.entries(desk.parts)
        .filter(([, part]) => part.state === state)
        .map(([value, { name }]) => ({ value, label: called(value, name) })),
    }))
    .filter(({ options }) => options.length > 0),
});

const forCar = (desk: Desk): FieldSpec => ({
  kind: 'pick',
  name: 'takenFor',
  label: 'For another car',
  wanted: false,
  groups: [{ label: 'On the floor', options: desk.cars.map((value) => ({ value, label: value })) }],
});

const chooseOption: FormOf = ({ key }, desk, values) => {
  const option = desk.options[key];
  const choice = text(values, 'choice');
  return {
    title: 'Choose',
    button: choice === '' ? 'Choose' : `Choose: ${choice}`,
    tone: 'main',
    fields: [
      {
        kind: 'choice',
        name: 'choice',
        label: option?.name ?? key,
        options: (option?.choices ?? []).map((value) => ({
          value,
          label: value,
          ...(value === option?.usual ? { hint: 'as usual' } : {}),
        })),
      },
    ],
    says: `${option?.name ?? key}: ${choice}. Another choice later is a change.`,
    brings: [],
    missing: choice === '' ? 'Choose one.' : null,
    claim: () => ({ type: 'choose-option', car: desk.car, option: key, choice }),
  };
};

const addNote: FormOf = ({ key }, desk, values) => {
  const note = text(values, 'text');
  return {
    title: 'Remark',
    button: 'Note it',
    tone: 'plain',
    fields: [{ kind: 'text', name: 'text', label: 'What others should know', wanted: true }],
    says: note,
    brings: ['A remark promises nothing and stops nothing: for what is wrong, report a finding.'],
    missing: note === '' ? 'Write the remark.' : null,
    claim: () => ({ type: 'add-note', car: desk.car, of: key, text: note }),
  };
};

/** `OPERATION/SLOT`, as a plan names it. */
const addPhoto: FormOf = (act, desk, values) => {
  const { key } = act;
  const cut = key.indexOf('/');
  const of = key.slice(0, cut);
  const slot = key.slice(cut + 1);
  const [hash = ''] = list(values, 'hash');
  return {
    title: `Photograph: ${slot}`,
    button: 'Taken',
    tone: 'main',
    fields: [
      {
        kind: 'photo',
        name: 'hash',
        label: `Photograph: ${slot}`,
        most: 1,
        act: photoAct(act),
      },
    ],
    says: `${slot} of ${called(of, desk.operations[of]?.name)} is photographed.`,
    brings: [],
    missing: unsentPhotos(values, 'hash') ?? (hash === '' ? 'Take or choose the photograph.' : null),
    claim: () => ({ type: 'add-photo', car: desk.car, of, slot, hash }),
  };
};

export const thingForms: Readonly<Record<ThingAct, FormOf>> = {
  'set-condition': setCondition,
  'clear-condition': clearCondition,
  'fit-part': fitPart,
  'take-part': takePart,
  'choose-option': chooseOption,
  'add-note': addNote,
  'add-photo': addPhoto,
};
