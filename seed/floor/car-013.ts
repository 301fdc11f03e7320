/** C54-013, pewter, waiting for its engine: the head was being turned to its angle when work stopped. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { DEMO_LEAD } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';
import { gradeDonor } from './donor';

const FIRST: readonly PersonId[] = ['oswin', 'tobit'];
const SECOND: readonly PersonId[] = ['tobit', 'oswin'];
const THIRD: readonly PersonId[] = ['ines', 'oswin'];

export const CAR_013 = 'C54-013';

export const buildCar013 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, CAR_013, FIRST);
  work.goTo(51, '09:00');
  const options = { dampers: 'refurb', axle: 'graded' };
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: CAR_013, colour: 'pewter', options });
  work.goTo(51, '13:20');
  gradeDonor(work, 'oswin', {
    // Dunmore made its last ones with the long number; this plate was hard to read.
    vehicle: { year: '1981', model: 'Dunmore 1800 L', number: 'ZZ9DM18S7BT004411', mileage: '61,000 miles' },
    unusual: {
      'P-11': { grade: 'scrap', place: 'skip', note: 'armature burnt out' },
      'P-01': { serial: 'DN 18 21408' },
      'P-17': { serial: 'G4 5240' },
    },
  });
  work.stage(50, FIRST);
  work.from(42, '12:00');
  work.advance('FR');
  work.stage(41, SECOND);
  work.say('oswin', {
    type: 'add-note',
    of: 'FR-050',
    text: 'Loom hole at cross-member 2 is 2 mm low against the template; grommet covers it.',
  });
  work.from(34, '08:00');
  work.advance('AX');
  work.stage(33, SECOND);
  work.advance('LN');
  work.stage(22, THIRD);
  work.from(8, '09:40');
  work.advance('EN');
  engine(work);
};

/** Bolts that were turned once are spent: ten new ones are wanted before anybody goes on. */
const engine = (work: CarWork): void => {
  const operation = 'EN-010';
  work.goTo(7, '08:05');
  work.give(['ines', 'oswin']);
  work.assign('operation', 'EN-010', ['ines']);
  clipCracked(work);
  work.goTo(1, '13:10');
  work.operation(operation, { people: ['ines'], linesDone: 3 });
  work.from(1, '15:50');
  work.say('ines', {
    type: 'pause-operation',
    operation,
    leftAs:
      'seat torque on all ten; angle pass stopped at bolt 6 of 10. Do not go on with these bolts: ten new ones',
  });
  work.say('ines', {
    type: 'report-finding',
    about: { kind: 'joint', key: 'J-501' },
    text: 'Bolt 7 creaked and stuck at half its angle. Six are turned, four are not: all ten are spent.',
  });
  work.goTo(0, '08:25');
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-1',
    disposition: 'rework',
    reason:
      'Head off again, holes cleaned, new gasket and ten new bolts; seat torque and angle from the start.',
  });
};

/** Found after its gate was passed: what holds the pipe should have been out by then. */
const clipCracked = (work: CarWork): void => {
  work.goTo(3, '09:20');
  work.say('oswin', {
    type: 'place-stopgap',
    what: 'tie wrap on the fuel line',
    quantity: 1,
    where: 'cross-member 3, left: keeps the pipe off the bracket until a second clip is here',
    outBy: 'LN',
  });
};
