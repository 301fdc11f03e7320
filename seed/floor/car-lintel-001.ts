/** LGT-001, in primer, first of the second model: tacked in the only jig, and out of true. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { DEMO_LEAD, DEMO_OWNER } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';

const FIRST: readonly PersonId[] = ['oswin', 'tobit'];

export const LINTEL_001 = 'LGT-001';

export const buildLintel001 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, LINTEL_001, FIRST);
  work.goTo(15, '09:00');
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: LINTEL_001, colour: 'primer' });
  work.say(DEMO_OWNER, {
    type: 'add-note',
    of: 'car',
    text: 'First of its plan. Two joints have no value yet, both at the rear glass: they are asked of nobody before its body.',
  });
  work.stage(14, FIRST);
  work.from(8, '14:30');
  work.advance('FR');
  work.goTo(7, '08:30');
  work.give(['oswin', 'tobit']);
  work.operation('FR-010');
  inTheJig(work);
};

/** Four millimetres between the diagonals, where three may be: nothing is welded out before it is set again. */
const inTheJig = (work: CarWork): void => {
  const operation = 'FR-020';
  work.goTo(2, '08:10');
  work.operation(operation, { people: ['oswin', DEMO_LEAD], linesDone: 1 });
  work.from(2, '11:40');
  work.say('oswin', {
    type: 'set-condition',
    condition: 'on-jig',
    reason: 'all of it pinned, second set of pins',
  });
  work.from(2, '13:30');
  work.say('oswin', {
    type: 'pass-check',
    check: 'K-16',
    values: { 'diagonals differ': '4', 'rails parallel': '1.2', twist: '0.8' },
  });
  work.say('oswin', {
    type: 'pause-operation',
    operation,
    leftAs: 'tacked, all pins in; diagonals 4 mm apart, long one from front left. Not to be welded out',
  });
  work.from(1, '09:50');
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-1',
    disposition: 'rework',
    reason:
      'Cut the four tacks at the third cross-member, pull it square with the chain, tack and measure again.',
  });
  work.assign('operation', operation, ['oswin', DEMO_LEAD]);
  work.from(0, '09:15');
  work.say('oswin', { type: 'resume-operation', operation });
  work.say(DEMO_LEAD, { type: 'join-operation', operation });
};
