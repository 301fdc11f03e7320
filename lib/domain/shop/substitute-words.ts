/** Why something may not stand in, what clears that, and what changes where it may. */
import { ZERO, compare, subtract } from '@/lib/domain/base/exact';
import { toDecimalText } from '@/lib/domain/base/exact';
import { ruleText } from '@/lib/domain/car/hardware';
import { lengthSentence } from './length-words';
import type { Consequence, SubstituteRefusal } from './substitute';

/** What the two are called. */
interface Names {
  readonly asked: string;
  readonly offered: string;
  readonly joint: string;
}

const MEASURE: Readonly<Record<'grip' | 'room' | 'nut' | 'washer', string>> = {
  grip: 'What the bolt goes through is not on record, so nobody can say whether the nut gets enough thread. Measure grip and washers, and the bolt that is in.',
  room: 'How much is free behind the bolt is not on record. Measure it, or turn the wheel and look what comes near.',
  nut: 'The height of this nut is in no table here. Measure one.',
  washer: 'A plain nut needs a lock washer of its own here. Name it.',
};

/** What is wrong, and what clears it. */
export const substituteSentence = (refusal: SubstituteRefusal, { asked, offered, joint }: Names): string => {
  switch (refusal.code) {
    case 'not-named':
      return `The plan does not let ${offered} stand in for ${asked} in ${joint}. Take ${asked}, or have the plan changed.`;
    case 'asks-lead':
      return `${offered} instead of ${asked} takes a lead's signature. A lead signs it.`;
    case 'not-in-critical':
      return `${joint} is critical: a plain nut with a washer never stands in for ${asked} there. Take a lock nut.`;
    case 'other-kind':
      return `${offered} (${refusal.is}) is another kind than ${asked} (${refusal.wanted}). Take one of the same kind.`;
    case 'other-thread':
      return `${offered} has another thread than ${asked}; inch and metric, coarse and fine never go together. Take the same thread.`;
    case 'shorter':
      return `${offered} is shorter than ${asked}. A substitute is only ever longer.`;
    case 'lower-grade':
      return `Grade ${refusal.is} is weaker than the ${refusal.wanted} that is planned. Take at least ${refusal.wanted}.`;
    case 'grade-unknown':
      return `The grades of ${offered} and ${asked} can't be compared. Take one with the planned mark on its head.`;
    case 'not-measured':
      return MEASURE[refusal.what];
    case 'fouls':
      return `Behind it ${toDecimalText(refusal.left, 3)} ${refusal.unit} would stay free, at least ${toDecimalText(refusal.atLeast, 3)} must. Take the planned length, or the next one below this.`;
    case 'length':
      return lengthSentence(refusal.refusal);
  }
};

export const consequenceSentence = (consequence: Consequence, name: (item: string) => string): string => {
  switch (consequence.kind) {
    case 'method':
      return consequence.method === 'prevailing'
        ? 'Tightened by prevailing torque: the drag is measured and added.'
        : 'There is no drag to add any more: the plain value holds.';
    case 'reuse':
      return `${capital(ruleText(consequence.reuse))}.`;
    case 'length': {
      const isMore = compare(consequence.by, ZERO) > 0;
      const size = isMore ? consequence.by : subtract(ZERO, consequence.by);
      return `${toDecimalText(size, 3)} ${consequence.unit} ${isMore ? 'longer' : 'shorter'} in all.`;
    }
    case 'drops':
      return `${name(consequence.item)} stays out.`;
    case 'adds':
      return `${name(consequence.item)} goes in with it.`;
    case 'torque-stays':
      return `Tightened to the value of grade ${consequence.grade}, as planned: a stronger bolt is no cure for a loose joint.`;
  }
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
