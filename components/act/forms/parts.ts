/** Parts: here and good, out to be worked on, back again. */
import { called, optional, text } from '@/components/act/form';
import type { FieldSpec, FormOf } from '@/components/act/form';
import type { PartThing } from '@/lib/wire/views/desk';
import { OUTCOMES } from '@/lib/domain/car/component-rows';
import { OUTCOME_WORDS } from '@/lib/wire/views/component-line';

const OWN = '';

/** Where it may come from, besides the bench; a lot's name holds no bar. */
const sources = (part: PartThing): readonly { readonly value: string; readonly label: string }[] => [
  ...part.givers.map((car) => ({ value: `car|${car}`, label: `off ${car}` })),
  ...part.shelf.map(({ item, lot }) => ({
    value: `shelf|${item}|${lot ?? ''}`,
    label: lot === null ? 'off the shelf' : `off the shelf, lot ${lot}`,
  })),
];

const whence = (chosen: string) => {
  const [kind, name, lot] = chosen.split('|');
  if (kind === 'car' && name !== undefined) return { from: name };
  if (kind === 'shelf' && name !== undefined) return { item: name, ...optional('lot', lot ?? '') };
  return {};
};

const isFromElsewhere = (chosen: string): boolean => Object.keys(whence(chosen)).length > 0;

const receivePart: FormOf = ({ key }, desk, values) => {
  const part = desk.parts[key];
  const from = part === undefined ? [] : sources(part);
  const chosen = text(values, 'from');
  // Another one than its own needs no look.
  const isLook = part?.waitsForLook === true && (part.state === 'back' || !isFromElsewhere(chosen));
  const fields: FieldSpec[] = [];
  if (isLook)
    fields.push({
      kind: 'text',
      name: 'looked',
      label: 'What was looked at or measured',
      ...(part.lookedAt === '' ? {} : { hint: `the plan says: ${part.lookedAt}` }),
      wanted: true,
    });
  if (from.length > 0)
    fields.push({
      kind: 'choice',
      name: 'from',
      label: 'Where it comes from',
      options: [...from, { value: OWN, label: 'its own, or nothing of these' }],
      start: part?.waitsForLook === true ? OWN : (from[0]?.value ?? OWN),
    });
  if (part?.state !== 'back')
    fields.push({
      kind: 'text',
      name: 'serial',
      label: 'Number on it',
      hint: 'if it has one',
      wanted: false,
    });
  return {
    title: 'Here and good',
    button: 'Here and good',
    tone: 'main',
    fields,
    says: `${called(key, part?.name)} is here and good.`,
    brings: [],
    missing: isLook && text(values, 'looked') === '' ? 'Say what was looked at or measured.' : null,
    claim: () => ({
      type: 'receive-part',
      car: desk.car,
      part: key,
      ...whence(chosen),
      ...optional('serial', text(values, 'serial')),
      ...(isLook ? optional('looked', text(values, 'looked')) : {}),
    }),
  };
};

const sendParts: FormOf = ({ key }, desk, values) => {
  const [first] = desk.trips;
  const trip = text(values, 'trip');
  const work = text(values, 'work');
  return {
    title: 'Out to be worked on',
    button: 'It is in the van',
    tone: 'plain',
    fields: [
      {
        kind: 'choice',
        name: 'trip',
        label: 'On which trip',
        options: desk.trips.map(({ trip: value, says }) => ({ value, label: `trip ${value}`, hint: says })),
        ...(first === undefined ? {} : { start: first.trip }),
      },
      { kind: 'text', name: 'work', label: 'What is to be done there', wanted: true },
    ],
    says: `${called(key, desk.parts[key]?.name)} goes out on trip ${trip}.`,
    brings: ['It does not count as here until it is back and was looked over.'],
    missing:
      first === undefined
        ? 'No trip is planned. A lead plans one on the page of the trips.'
        : work === ''
          ? 'Say what is to be done there.'
          : null,
    claim: () => ({ type: 'send-parts', car: desk.car, trip, parts: [{ part: key, work }] }),
  };
};

const returnParts: FormOf = ({ key }, desk, values) => {
  const part = desk.parts[key];
  const note = text(values, 'note');
  const how = OUTCOMES.find((each) => each === text(values, 'how')) ?? 'done';
  return {
    title: 'Back in the house',
    button: 'Count it in',
    tone: 'plain',
    fields: [
      {
        kind: 'choice',
        name: 'how',
        label: 'How it came back',
        options: OUTCOMES.map((value) => ({
          value,
          label: OUTCOME_WORDS[value],
          ...(value === 'damaged' ? { brings: ['A finding about it opens.'] } : {}),
        })),
        start: 'done',
      },
      { kind: 'text', name: 'note', label: 'Remark', wanted: false },
    ],
    says: `${called(key, part?.name)} is back from trip ${part?.trip ?? ''}: ${OUTCOME_WORDS[how]}.`,
    brings: how === 'done' ? ['Somebody looks it over before it counts as here.'] : [],
    missing: null,
    claim: () => ({
      type: 'return-parts',
      car: desk.car,
      trip: part?.trip ?? '',
      parts: [{ part: key, how, ...optional('note', note) }],
    }),
  };
};

export const partForms = {
  'receive-part': receivePart,
  'send-parts': sendParts,
  'return-parts': returnParts,
} as const;
