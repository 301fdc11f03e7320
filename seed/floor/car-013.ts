/** C54-013, pewter, early on: its front end is going together this morning. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { DEMO_LEAD } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';
import { settleLine } from './operation-run';

const FIRST: readonly PersonId[] = ['oswin', 'tobit'];
const SECOND: readonly PersonId[] = ['tobit', 'oswin'];

export const CAR_013 = 'C54-013';

export const buildCar013 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, CAR_013, FIRST);
  work.goTo(27, '09:00');
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: CAR_013, colour: 'pewter' });
  work.stage(26, FIRST);
  work.advance('FR');
  work.stage(18, SECOND);
  work.say('oswin', {
    type: 'add-note',
    of: 'FR-050',
    text: 'Loom hole at cross-member 2 is 2 mm low against the template; grommet covers it.',
  });
  work.advance('AX');
  axles(work);
};

/** The rear axle is taken over half built; the front is being put together by the man who hung its arms. */
const axles = (work: CarWork): void => {
  work.goTo(6, '08:00');
  work.give(SECOND);
  work.operation('AX-010', { people: ['tobit'] });
  work.say(DEMO_LEAD, { type: 'choose-option', option: 'axle', choice: 'graded' });
  work.goTo(5, '08:00');
  work.operation('AX-060', { people: ['tobit'] });
  work.leave.add('J-203@R');
  work.goTo(4, '08:00');
  work.operation('AX-070', { people: ['tobit'] });
  rearAxle(work);
  work.goTo(0, '09:05');
  work.operation('AX-080', { people: ['tobit'], linesDone: 7 });
};

const rearAxle = (work: CarWork): void => {
  const operation = 'AX-020';
  work.goTo(3, '13:30');
  work.operation(operation, { people: ['tobit'], linesDone: 6 });
  work.pass(20);
  work.say('tobit', {
    type: 'pause-operation',
    operation,
    leftAs: 'left backplate on, right one loose on its studs',
  });
  work.goTo(1, '08:15');
  work.say('oswin', { type: 'take-over-operation', operation });
  const { body } = work.site().plan.operations.get(operation) ?? { body: [] };
  for (const line of body.slice(6, 8)) {
    work.pass(35);
    settleLine(work, 'oswin', operation, line);
    work.lookAll();
  }
  work.pass(15);
  work.say('oswin', {
    type: 'pause-operation',
    operation,
    leftAs: 'left half-shaft in its window and pinned; shims for the right are on the bench',
  });
};
