import { expect } from 'vitest';
import { checkPlan } from '@/lib/domain/plan/check';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { ProblemCode, Rank } from '@/lib/domain/plan/problem';
import { problemSentence } from '@/lib/domain/plan/problem-sentence';

/** A small plan against which nothing can be said; each case spoils one place of it. */
export const sound: PlanDocument = {
  plan: 'Corbel 54',
  revision: '1',
  options: { heater: { name: 'Heater', choices: ['none', 'fitted'], usual: 'none' } },
  conditions: { weight: 'Weight on wheels', bled: 'System bled' },
  stages: { S1: { name: 'Frame' }, S2: { name: 'Axle', entry: ['A'] }, S3: { name: 'Finish' } },
  operations: {
    A: {
      name: 'Hang the axle',
      stage: 'S1',
      body: ['snug J-1', 'place G-1'],
      wait: '16 h',
      cautions: ['C-1'],
    },
    B: {
      name: 'Tighten the axle',
      stage: 'S2',
      needs: ['A', 'wait A'],
      body: ['final J-1', 'set weight', 'check K-1', 'photo stamp', 'out G-1'],
    },
    C: {
      name: 'Close the floor',
      stage: 'S3',
      needs: ['J-1 verified', '+weight', 'K-1', 'G-1 out', 'part P-1', 'photo B/stamp', '-bled'],
      covers: ['J-1'],
      body: ['fit P-1'],
      madeOn: 'P-1',
      irreversible: true,
    },
    D: { name: 'Bleed', stage: 'S3', body: ['set bled'], redo: true, hardware: { BOLT: 2 } },
    E: {
      name: 'Heater',
      stage: 'S3',
      repeat: 'sides',
      when: 'heater=fitted',
      body: ['final J-2', 'check K-2'],
    },
    F: { name: 'Look round', stage: 'S3', needs: ['E', 'J-2@L final'] },
  },
  joints: {
    'J-1': {
      name: 'Axle to spring',
      fasteners: 4,
      pattern: 'cross',
      method: 'click',
      torque: '45 ± 3 N·m',
      source: 'Shop manual, page 12',
      hardware: { BOLT: 4 },
      critical: true,
      verify: 'seen',
      clears: ['bled'],
      loadedBy: ['weight'],
      disturbs: ['J-2@*'],
      due: 'S2',
    },
    'J-2': {
      name: 'Heater bracket',
      repeat: 'sides',
      when: 'heater=fitted',
      fasteners: 2,
      method: 'click',
      torque: '20 to 25 N·m',
      source: 'Shop manual, page 40',
      hardware: { BOLT: { quantity: 2, dueAgain: ['A'] } },
    },
  },
  checks: {
    'K-1': { name: 'Gap', kind: 'measured', values: { gap: '>= 2 mm' }, source: 'Drawing 3', about: 'J-1' },
    'K-2': { name: 'Bracket', repeat: 'sides', kind: 'visual', values: { bracket: 'none cracked' } },
  },
  stopgaps: { 'G-1': { name: 'Slave bolt', quantity: 2, slaveIn: ['J-1'], outBy: 'S2' } },
  parts: { 'P-1': { name: 'Floor', outside: '7 d' } },
  items: {
    BOLT: { name: 'Bolt M10', reuse: 'once final', substitutes: { STUD: { notIn: ['J-2'] } } },
    STUD: { name: 'Stud M10' },
  },
  cautions: { 'C-1': { hazard: 'Crushing', text: 'Stand clear.' } },
};

export type Edit = readonly [place: string, value: unknown];

/** One item comes in lengths of 6 m, of which 5980 mm are good. */
export const CUT_STUD: readonly Edit[] = [
  ['items/STUD/unit', 'm'],
  ['items/STUD/cut', { lengths: ['2 m', '6 m'], kerf: '3 mm', ends: '10 mm', keep: '1/2 in' }],
];

/** The sound plan with other values at some places, written `joints/J-1/torque`; undefined takes one out. */
export const spoilt = (edits: readonly Edit[]): PlanDocument => {
  const draft = structuredClone(sound);
  for (const [place, value] of edits) {
    const steps = place.split('/');
    const last = steps.pop() ?? '';
    let at: object = draft;
    for (const step of steps) {
      if (!Object.hasOwn(at, step)) Reflect.set(at, step, {});
      at = Reflect.get(at, step) as object;
    }
    if (value === undefined) Reflect.deleteProperty(at, last);
    else Reflect.set(at, last, value);
  }
  return draft;
};

export interface Case {
  readonly given: string;
  readonly edits: readonly Edit[];
  readonly at: string;
  readonly rank?: Rank;
}

export const one = (
  given: string,
  place: string,
  value: unknown,
  at = place,
  more: Partial<Case> = {},
): Case => ({
  given,
  edits: [[place, value]],
  at,
  ...more,
});

export const operation = { name: 'More', stage: 'S1' };
export const bracket = { ...sound.joints?.['J-2'], repeat: undefined, when: undefined };

export const told = (document: PlanDocument): string[] =>
  checkPlan(document)
    .map(({ code, path }) => `${code} ${path.join('/')}`)
    .sort();

/** The case's problem and no other is told, in words that hold together. */
export const expectOnly = (code: ProblemCode, { edits, at, rank }: Case): void => {
  const problems = checkPlan(spoilt(edits));
  expect(told(spoilt(edits))).toEqual([`${code} ${at}`]);
  const [problem] = problems;
  if (rank !== undefined) expect(problem?.rank).toBe(rank);
  for (const each of problems) {
    expect(problemSentence(each)).toMatch(/^\S.+[.?]$/s);
    expect(problemSentence(each)).not.toMatch(/undefined|“”(?! )|@\*? with one of ,/);
  }
};
