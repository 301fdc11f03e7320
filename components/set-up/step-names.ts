import type { GlyphName } from '@/components/ui/glyph';
import type { SetUpStep } from '@/lib/wire/views/set-up';

type StepKey = SetUpStep['key'];

interface Naming {
  readonly name: string;
  /** What it is for. */
  readonly means: string;
}

export const STEP_NAMES: Readonly<Record<StepKey, Naming>> = {
  shop: {
    name: 'Shop',
    means: 'What it is called, and the time zone of its clock: a day ends by it.',
  },
  people: {
    name: 'People',
    means:
      'Who works here, in which roles, with which qualifications. Each gets a link and sets a PIN that nobody else knows.',
  },
  tablets: {
    name: 'Tablets',
    means:
      'Where technicians sign in and sign by PIN. Only those that you enrol take one; a lost one is taken off with one press.',
  },
  tools: {
    name: 'Tools',
    means:
      'Torque tools and gauges with range and calibration. A joint can be snug without one, and final only with one that fits.',
  },
  plans: {
    name: 'Build plan',
    means:
      'Stages, operations, joints, checks, from a file. It is read and checked by line; what is released is frozen.',
  },
  cars: {
    name: 'Begin a car',
    means: 'A chassis number on a released plan. Its plate then stands on the board.',
  },
};

interface Standing {
  readonly glyph: GlyphName;
  readonly says: string;
}

/** How a step stands, as a sign and in a word. */
export const standingOf = ({ isDone, isLeft }: Pick<SetUpStep, 'isDone' | 'isLeft'>): Standing =>
  isDone
    ? { glyph: 'passed', says: 'begun' }
    : isLeft
      ? { glyph: 'gap', says: 'left for later' }
      : { glyph: 'due', says: 'not yet' };

export const hrefOf = (key: StepKey): string => `/set-up/${key}`;
