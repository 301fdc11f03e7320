/** Stopgaps and holds. */
import type { FieldSpec, FormOf, Values } from '@/components/act/form';
import { called, list, optional, reasonField, text } from '@/components/act/form';
import type { HoldScope } from '@/lib/domain/base/vocabulary';
import type { Desk } from '@/lib/wire/views/desk';

type MatterAct = 'place-stopgap' | 'remove-stopgap' | 'place-hold' | 'release-hold';

const SOMETHING_ELSE = 'else';

/** One of the plan's, or whatever is in the hand: a tie wrap, a wire. */
const placeStopgap: FormOf = (act, desk, values) => {
  const picked = act.key === '' ? text(values, 'stopgap') || SOMETHING_ELSE : act.key;
  const planned = picked === SOMETHING_ELSE ? undefined : desk.planned[picked];
  const what = text(values, 'what');
  const quantity = Number(text(values, 'quantity') || String(planned?.quantity ?? 1));
  const stage = desk.stages[Object.keys(desk.stages)[desk.stage] ?? ''];
  return {
    title: 'Stopgap placed',
    button: 'Placed',
    tone: 'stop',
    fields: [
      ...(act.key === '' ? [whichStopgap(desk)] : []),
      ...(planned === undefined ? [whatField] : []),
      {
        kind: 'count',
        name: 'quantity',
        label: 'How many',
        least: 1,
        most: 999,
        start: planned?.quantity ?? 1,
      },
      { kind: 'text', name: 'where', label: 'Where', wanted: false },
    ],
    says: `${String(quantity)} × ${planned === undefined ? what || 'stopgap' : called(picked, planned.name)} went in.`,
    brings: [
      `It is out by the gate of ${planned?.outBy ?? stage?.name ?? 'this stage'}, once as many came out as went in.`,
    ],
    missing: planned === undefined && what === '' ? 'Say what it is.' : null,
    claim: () => ({
      type: 'place-stopgap',
      car: desk.car,
      quantity,
      ...(planned === undefined ? { what } : { stopgap: picked }),
      ...optional('where', text(values, 'where')),
    }),
  };
};

const whichStopgap = (desk: Desk): FieldSpec => ({
  kind: 'pick',
  name: 'stopgap',
  label: 'Which',
  wanted: false,
  groups: [
    {
      label: 'Just now',
      options: [{ value: SOMETHING_ELSE, label: 'Something that the plan does not name' }],
    },
    {
      label: 'In the plan',
      options: Object.entries(desk.planned).map(([value, { name }]) => ({
        value,
        label: called(value, name),
      })),
    },
  ],
});

const whatField: FieldSpec = {
  kind: 'text',
  name: 'what',
  label: 'What',
  wanted: true,
  picks: ['tie wrap', 'wire', 'slave part', 'bung', 'tape', 'parked bolt'],
};

const removeStopgap: FormOf = ({ key }, desk, values) => {
  const stopgap = desk.stopgaps[key];
  const left = stopgap?.left ?? 1;
  const quantity = Number(text(values, 'quantity') || String(left));
  const rest = left - quantity;
  return {
    title: 'Took out',
    button: `${String(quantity)} out`,
    tone: 'main',
    fields: [
      {
        kind: 'count',
        name: 'quantity',
        label: 'How many came out',
        hint: `${String(left)} in`,
        least: 1,
        most: left,
        start: left,
      },
    ],
    says: `${String(quantity)} of ${called(key, stopgap?.name)} came out${rest > 0 ? `; ${String(rest)} still in` : ''}.`,
    brings: [],
    missing: null,
    claim: () => ({ type: 'remove-stopgap', car: desk.car, stopgap: key, quantity }),
  };
};

const SCOPES: readonly (readonly [HoldScope, string, string])[] = [
  ['things', 'Work on these things', 'named joints, checks, parts, operations'],
  ['work', 'All work', 'nothing may be started; looking goes on'],
  ['gate', 'The gate only', 'work goes on; the car does not pass its gate'],
];

const placeHold: FormOf = (_act, desk, values) => {
  const [scope, label] = SCOPES.find(([each]) => each === text(values, 'scope')) ?? SCOPES[1] ?? ['work', ''];
  const things = scope === 'things' ? list(values, 'things') : [];
  const reason = text(values, 'reason');
  return {
    title: 'Hold',
    button: 'Hold',
    tone: 'stop',
    fields: [
      {
        kind: 'choice',
        name: 'scope',
        label: 'What is stopped',
        start: scope,
        options: SCOPES.map(([value, name, hint]) => ({ value, label: name, hint })),
      },
      ...(scope === 'things' ? [thingsField(desk, values)] : []),
      reasonField('Why', ['doubt about a part', 'papers', 'safety', 'money']),
    ],
    says: `${desk.chassis} is held. ${label}${things.length === 0 ? '' : `: ${things.join(', ')}`}. ${reason}`,
    brings: ['A lead releases it, with a reason.'],
    missing:
      scope === 'things' && things.length === 0 ? 'Name what is stopped.' : reason === '' ? 'Say why.' : null,
    claim: () => ({
      type: 'place-hold',
      car: desk.car,
      scope,
      reason,
      ...(things.length === 0 ? {} : { things }),
    }),
  };
};

const thingsField = (desk: Desk, values: Values): FieldSpec => ({
  kind: 'many',
  name: 'things',
  label: 'Which things',
  hint: 'write the beginning of a code or a name',
  start: list(values, 'things'),
  options: [
    ...Object.entries(desk.joints).map(([value, { name }]) => ({ value, label: called(value, name) })),
    ...Object.entries(desk.checks).map(([value, { name }]) => ({ value, label: called(value, name) })),
    ...Object.entries(desk.parts).map(([value, { name }]) => ({ value, label: called(value, name) })),
    ...Object.entries(desk.operations).map(([value, { name }]) => ({ value, label: called(value, name) })),
  ],
});

const releaseHold: FormOf = ({ key }, desk, values) => {
  const reason = text(values, 'reason');
  return {
    title: 'Release',
    button: 'Release',
    tone: 'plain',
    fields: [reasonField('Why it is over')],
    says: `${key} is over (${desk.holds[key]?.reason ?? ''}): ${reason}`,
    brings: [],
    missing: reason === '' ? 'Say why it is over.' : null,
    claim: () => ({ type: 'release-hold', car: desk.car, hold: key, reason }),
  };
};

export const matterForms: Readonly<Record<MatterAct, FormOf>> = {
  'place-stopgap': placeStopgap,
  'remove-stopgap': removeStopgap,
  'place-hold': placeHold,
  'release-hold': releaseHold,
};
