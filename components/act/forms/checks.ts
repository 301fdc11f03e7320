/** Begin, pass and fail a check; the plan's values with their limits and units. */
import type { FieldSpec, FormOf, Values } from '@/components/act/form';
import { called, text } from '@/components/act/form';
import { placeOfText } from '@/components/act/value-place';
import type { ActRef, CheckLook, CheckThing, CheckValue, Desk } from '@/lib/wire/views/desk';
import { toolOption } from './joints';

const thingOf = ({ key }: ActRef, desk: Desk): CheckThing | undefined => desk.checks[key];

const valueName = (name: string): string => `value:${name}`;

const valueFields = (look: CheckLook | undefined): readonly FieldSpec[] =>
  (look?.values ?? []).map((value) => ({
    kind: 'value',
    name: valueName(value.name),
    label: value.name,
    value,
  }));

const gaugeField = (look: CheckLook | undefined): readonly FieldSpec[] =>
  look === undefined || look.gauges.length === 0
    ? []
    : [
        {
          kind: 'pick',
          name: 'tool',
          label: 'Gauge',
          wanted: false,
          groups: [{ label: 'Gauges', options: look.gauges.map(toolOption) }],
        },
      ];

const clockField = (look: CheckLook | undefined): readonly FieldSpec[] =>
  look === undefined || look.begunAt === null
    ? []
    : [
        {
          kind: 'clock',
          name: 'clock',
          label: 'Still to hold',
          begunAt: look.begunAt,
          holdsMs: look.holdsMs,
          by: look.by ?? '',
        },
      ];

const given = (look: CheckLook | undefined, values: Values): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (look?.values ?? [])
      .map(({ name }) => [name, text(values, valueName(name))] as const)
      .filter(([, value]) => value !== ''),
  );

/** Outside its limits it fails by itself, whoever calls it a pass: said before it is signed. */
const outside = (look: CheckLook | undefined, values: Values): readonly string[] =>
  (look?.values ?? []).flatMap((value) => {
    const typed = text(values, valueName(value.name));
    return isOutside(value, typed)
      ? [`${value.name} ${typed === 'no' ? 'is not so' : typed}: asked is ${value.limit}`]
      : [];
  });

const isOutside = (value: CheckValue, typed: string): boolean =>
  value.kind === 'statement' ? typed === 'no' : placeOfText(value, typed) === 'outside';

const pass: FormOf = (act, desk, values) => {
  const check = thingOf(act, desk);
  const name = called(act.key, check?.name);
  const look = check?.look;
  const wrong = outside(look, values);
  const left = (look?.values ?? []).filter(({ name: each }) => text(values, valueName(each)) === '');
  const tool = text(values, 'tool');
  const isFailing = wrong.length > 0;
  return {
    title: isFailing ? 'It fails' : 'Passed',
    button: isFailing ? 'Sign as failed' : 'Passed',
    tone: isFailing ? 'stop' : 'main',
    fields: [...clockField(look), ...valueFields(look), ...gaugeField(look)],
    says: isFailing
      ? `${name} failed: ${wrong.join('; ')}.`
      : `${name} is passed, round ${String(check?.round ?? 1)}.`,
    brings: isFailing
      ? [
          'Nobody can call this a pass. A finding is opened, and a lead decides what is done.',
          ...(look?.neverConcede === true ? ['It may never be taken as it is, the plan says.'] : []),
          ...(look?.failure === undefined || look.failure === null ? [] : [`Usual end: ${look.failure}`]),
        ]
      : [],
    ...(isFailing ? {} : readyAt(look)),
    missing: left.length > 0 && !isFailing ? `Give ${left.map(({ name: each }) => each).join(', ')}.` : null,
    claim: () => ({
      type: 'pass-check',
      car: desk.car,
      check: act.key,
      round: check?.round ?? 1,
      values: given(look, values),
      ...(tool === '' ? {} : { tool }),
    }),
  };
};

const readyAt = (look: CheckLook | undefined): { readonly readyAt?: string } =>
  look === undefined || look.begunAt === null
    ? {}
    : { readyAt: new Date(Date.parse(look.begunAt) + look.holdsMs).toISOString() };

const begin: FormOf = (act, desk) => {
  const check = thingOf(act, desk);
  return {
    title: 'Begin',
    button: 'Begin the clock',
    tone: 'main',
    fields: [],
    says: `${called(act.key, check?.name)} begins: it must hold ${minutesText(check?.look?.holdsMs ?? 0)}.`,
    brings: [],
    missing: null,
    claim: () => ({ type: 'begin-check', car: desk.car, check: act.key, round: check?.round ?? 1 }),
  };
};

const minutesText = (milliseconds: number): string =>
  milliseconds < 3_600_000
    ? `${String(Math.round(milliseconds / 60_000))} min`
    : `${String(Math.round(milliseconds / 360_000) / 10)} h`;

const fail: FormOf = (act, desk, values) => {
  const key = act.key === '' ? text(values, 'check') : act.key;
  const check = desk.checks[key];
  const reason = text(values, 'reason');
  return {
    title: 'It fails',
    button: 'It fails',
    tone: 'stop',
    fields: [
      ...(act.key === ''
        ? [{ kind: 'pick' as const, name: 'check', label: 'Check', groups: checkGroups(desk), wanted: true }]
        : []),
      { kind: 'text', name: 'reason', label: 'What is wrong', wanted: true },
    ],
    says: `${called(key, check?.name)} failed.`,
    brings: key === '' ? [] : ['A finding is opened, and a lead decides what is done.'],
    missing: key === '' ? 'Say which check.' : reason === '' ? 'Say what is wrong.' : null,
    claim: () => ({ type: 'fail-check', car: desk.car, check: key, round: check?.round ?? 1, reason }),
  };
};

const checkGroups = (desk: Desk) =>
  Object.values(desk.stages)
    .map(({ number, name }) => ({
      label: `${String(number)} ${name}`,
      options: Object.entries(desk.checks)
        .filter(([, check]) => check.stage === number - 1)
        .map(([value, check]) => ({ value, label: `${called(value, check.name)}: ${check.status}` })),
    }))
    .filter(({ options }) => options.length > 0);

export const checkForms: Readonly<Record<'begin-check' | 'pass-check' | 'fail-check', FormOf>> = {
  'begin-check': begin,
  'pass-check': pass,
  'fail-check': fail,
};
