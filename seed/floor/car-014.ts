/** C54-014, cream, at its lines: the tank is lined and cures, a strap cracked, and a lot of tube nuts is not to be trusted. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { DEMO_LEAD } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';
import { gradeDonor } from './donor';
import { LOT_TOO_SOFT } from './lots';
import { tubeNutsCome } from './supply';

const FIRST: readonly PersonId[] = ['tobit', 'ines'];
const SECOND: readonly PersonId[] = ['ines', 'tobit'];
const THIRD: readonly PersonId[] = ['oswin', 'ines'];

export const CAR_014 = 'C54-014';
/** Of ten tube nuts the last six are of it. */
const FROM_SOFT_LOT = 'J-310@5';

export const buildCar014 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, CAR_014, FIRST);
  work.goTo(42, '09:00');
  const options = { firewall: 'bought', axle: 'graded', dampers: 'new' };
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: CAR_014, colour: 'cream', options });
  work.goTo(42, '13:30');
  gradeDonor(work, 'ines', {
    vehicle: {
      year: '1967',
      model: 'Dunmore 1800',
      number: 'D18-71038',
      from: 'Harl Cross, with no papers but its title',
    },
    unusual: {
      'P-05': { grade: 'replace', place: 'skip', note: 'end gap 0.31 mm' },
      'P-01': { serial: 'DN 18 19962' },
      'P-17': { serial: 'G4 5102' },
    },
    hardware: [{ item: 'C38x1.75', good: '2', lot: 'L-0914', bin: '12C' }],
  });
  work.stage(41, FIRST);
  work.from(33, '13:00');
  work.advance('FR');
  work.stage(32, SECOND);
  work.from(24, '08:20');
  work.advance('AX');
  work.stage(23, THIRD);
  work.from(12, '14:00');
  work.advance('LN');
  lines(work);
};

const lines = (work: CarWork): void => {
  work.goTo(11, '08:00');
  work.give(SECOND);
  work.operation('LN-010', { people: ['tobit'], before: { [FROM_SOFT_LOT]: () => softLotComes(work) } });
  for (const key of ['LN-020', 'LN-030', 'LN-040', 'LN-050', 'LN-090', 'LN-100']) work.operation(key);
  tank(work);
  strap(work);
};

const softLotComes = (work: CarWork): void => {
  if (work.floor.driver.world.shop.lots[LOT_TOO_SOFT] !== undefined) return;
  work.floor.driver.must(DEMO_LEAD, tubeNutsCome);
};

/** Pinholes: the lead has it lined, and the sealer wants three days before the test may be made again. */
const tank = (work: CarWork): void => {
  work.goTo(4, '09:30');
  work.say('mara', {
    type: 'fail-check',
    check: 'K-36',
    values: { 'pressure at the start': '0.15', loss: '0.04', bubbles: 'no' },
    reason: 'Back from the wash and tried at once: four pinholes along the lower seam.',
  });
  work.pass(25);
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-1',
    disposition: 'rework',
    reason: 'Line it. The metal round the holes is sound; the test is made again when the sealer is hard.',
  });
  work.say(DEMO_LEAD, { type: 'choose-option', option: 'tank', choice: 'lined' });
  work.goTo(1, '10:05');
  work.operation('LN-055', { people: ['ines'] });
  work.say('ines', {
    type: 'add-note',
    of: 'LN-055',
    text: 'Turned a quarter every ten minutes for an hour. Stands in the booth, caps off, label on the door.',
  });
};

/** A crack at a drilled hole: the strap is replaced, and with it the drilling is due again. */
const strap = (work: CarWork): void => {
  work.goTo(0, '08:50');
  work.say('ines', {
    type: 'report-finding',
    about: { kind: 'part', key: 'tank-strap' },
    text: 'Hair crack from the edge into hole 2 of the left strap, seen when the felt was pulled straight.',
  });
  work.pass(15);
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-2',
    disposition: 'replace',
    reason: 'New pair from the S40 remnant; match-drilled again with the tank dummy up.',
  });
  work.assign('operation', 'LN-050', ['ines']);
  work.say(DEMO_LEAD, {
    type: 'place-hold',
    scope: 'things',
    things: ['LN-070'],
    reason: 'The tank stays on the bench until its new straps are seen and the air test is passed.',
  });
};
