/** Findings and changes: reported, decided, closed. */
import type { FormOf, OptionGroup } from '@/components/act/form';
import { called, optional, reasonField, text } from '@/components/act/form';
import { DISPOSITIONS } from '@/lib/domain/base/vocabulary';
import type { Disposition } from '@/lib/domain/base/vocabulary';
import type { Desk } from '@/lib/wire/views/desk';
import { DISPOSITION_WORDS } from '@/lib/wire/views/event-matters';
import { jointGroups } from './joints';

type FindingAct = 'report-finding' | 'decide-finding' | 'close-finding' | 'ask-change' | 'decide-change';

type AboutKind = 'part' | 'joint' | 'check' | 'place';

const ABOUTS: readonly (readonly [AboutKind, string])[] = [
  ['part', 'a part'],
  ['joint', 'a joint'],
  ['check', 'a check'],
  ['place', 'a place on the car'],
];

const reportFinding: FormOf = (_act, desk, values) => {
  const [kind] = ABOUTS.find(([each]) => each === text(values, 'kind')) ?? ['part'];
  const key = text(values, `about:${kind}`);
  const says = text(values, 'text');
  return {
    title: 'Finding',
    button: 'Found',
    tone: 'stop',
    fields: [
      {
        kind: 'choice',
        name: 'kind',
        label: 'About',
        start: kind,
        options: ABOUTS.map(([value, label]) => ({ value, label })),
      },
      kind === 'place'
        ? { kind: 'text', name: 'about:place', label: 'Where', wanted: true }
        : {
            kind: 'pick',
            name: `about:${kind}`,
            label: 'Which',
            groups: aboutGroups(desk, kind),
            wanted: true,
          },
      { kind: 'text', name: 'text', label: 'What is wrong', wanted: true },
    ],
    says: `Something is wrong${key === '' ? '' : ` with ${key}`}: ${says}`,
    brings: [
      'A lead decides what is done. Until then it holds the gate; an open finding on a part keeps it from being fitted.',
    ],
    missing: key === '' ? 'Say what it is about.' : says === '' ? 'Say what is wrong.' : null,
    claim: () => ({ type: 'report-finding', car: desk.car, about: { kind, key }, text: says }),
  };
};

const aboutGroups = (desk: Desk, kind: Exclude<AboutKind, 'place'>): readonly OptionGroup[] => {
  if (kind === 'joint') return jointGroups(desk);
  const things: Readonly<Record<string, { readonly name: string }>> =
    kind === 'part' ? desk.parts : desk.checks;
  return [
    {
      label: kind === 'part' ? 'Parts' : 'Checks',
      options: Object.entries(things).map(([value, { name }]) => ({ value, label: called(value, name) })),
    },
  ];
};

const WORK: Readonly<Record<Disposition, string>> = {
  rework: 'It is made good, and looked at again.',
  replace: 'Another one goes in.',
  'repair-outside': 'It goes out to be repaired, and comes back.',
  scrap: 'It goes in the bin; its place is owed until another one is fitted.',
  misread: 'The gauge or the eye was wrong. The same check again.',
  'use-as-is': 'It departs from the plan: somebody else approves it, the owner too where it is critical.',
};

const decideFinding: FormOf = ({ key }, desk, values) => {
  const finding = desk.findings[key];
  const chosen = DISPOSITIONS.find((each) => each === text(values, 'disposition'));
  const reason = text(values, 'reason');
  return {
    title: 'What is to be done',
    button: chosen === undefined ? 'Decide' : `Decide: ${DISPOSITION_WORDS[chosen]}`,
    tone: 'main',
    fields: [
      {
        kind: 'choice',
        name: 'disposition',
        label: 'Disposition',
        hint: 'choose one to see what it would bring',
        options: (finding?.dispositions ?? []).map(({ disposition, barred, brings }) => ({
          value: disposition,
          label: capital(DISPOSITION_WORDS[disposition]),
          hint: WORK[disposition],
          brings,
          ...(barred === null ? {} : { barred }),
        })),
      },
      reasonField('Reason, kept for good'),
    ],
    says: `${key} about ${finding?.about ?? ''}: ${chosen === undefined ? '' : DISPOSITION_WORDS[chosen]}.`,
    brings: [],
    missing: chosen === undefined ? 'Choose what is done.' : reason === '' ? 'Give the reason.' : null,
    claim: () => ({
      type: 'decide-finding',
      car: desk.car,
      finding: key,
      disposition: chosen ?? 'rework',
      reason,
    }),
  };
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const closeFinding: FormOf = ({ key }, desk, values) => ({
  title: 'Work done',
  button: 'Close it',
  tone: 'main',
  fields: [{ kind: 'text', name: 'text', label: 'What was done', wanted: false }],
  says: `${key}: its work is done.`,
  brings: [],
  missing: null,
  claim: () => ({
    type: 'close-finding',
    car: desk.car,
    finding: key,
    ...optional('text', text(values, 'text')),
  }),
});

// ---- changes ----

const askChange: FormOf = ({ key }, desk, values) => {
  const reason = text(values, 'reason');
  const name = called(key, desk.operations[key]?.name);
  return {
    title: 'Ask to end the wait early',
    button: 'Ask',
    tone: 'plain',
    fields: [reasonField('Reason')],
    says: `The wait after ${name} is to end before its time.`,
    brings: ['It departs from the plan: somebody who neither asks nor did the work approves it.'],
    missing: reason === '' ? 'Give the reason.' : null,
    claim: () => ({ type: 'ask-change', car: desk.car, wait: key, reason }),
  };
};

const decideChange: FormOf = ({ key }, desk, values) => {
  const change = desk.changes[key];
  const isDeclined = text(values, 'approve') === 'no';
  const reason = text(values, 'reason');
  return {
    title: 'Decide the change',
    button: isDeclined ? 'Decline' : 'Approve',
    tone: isDeclined ? 'stop' : 'main',
    fields: [
      {
        kind: 'choice',
        name: 'approve',
        start: isDeclined ? 'no' : 'yes',
        label: change?.says ?? key,
        hint: change?.reason ?? '',
        options: [
          {
            value: 'yes',
            label: 'Approve',
            hint:
              change?.critical === true
                ? 'critical: it waits until an owner approves too'
                : 'one approval is enough',
          },
          { value: 'no', label: 'Decline', hint: 'what it was asked for is decided anew' },
        ],
      },
      { kind: 'text', name: 'reason', label: 'Reason', wanted: isDeclined },
    ],
    says: `${key} is ${isDeclined ? 'declined' : 'approved'}: ${change?.says ?? ''}`,
    brings:
      change === undefined || change.approvals.length === 0
        ? []
        : [`Approved so far by ${change.approvals.join(' and ')}.`],
    missing: isDeclined && reason === '' ? 'Give the reason.' : null,
    claim: () => ({
      type: 'decide-change',
      car: desk.car,
      change: key,
      approve: !isDeclined,
      ...optional('reason', reason),
    }),
  };
};

export const findingForms: Readonly<Record<FindingAct, FormOf>> = {
  'report-finding': reportFinding,
  'decide-finding': decideFinding,
  'close-finding': closeFinding,
  'ask-change': askChange,
  'decide-change': decideChange,
};
