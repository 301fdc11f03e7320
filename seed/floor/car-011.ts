/** C54-011, oxblood, nearly done: its engine has run, and it is looked over before its first miles. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { tightening, verifying } from '@/seed/acts';
import { DEMO_LEAD, TOOL_DROPPED, TOOL_READS_HIGH } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';

const FIRST: readonly PersonId[] = ['tobit', 'oswin'];
const SECOND: readonly PersonId[] = ['oswin', 'ines'];
const THIRD: readonly PersonId[] = ['ines', 'tobit'];

export const CAR_011 = 'C54-011';

export const buildCar011 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, CAR_011, FIRST);
  work.goTo(71, '09:00');
  const options = { dampers: 'refurb', firewall: 'made' };
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: CAR_011, colour: 'oxblood', options });
  strip(work);
  work.advance('FR');
  work.stage(63, FIRST);
  work.advance('AX');
  tightenedTooFar(work);
  work.stage(54, FIRST);
  work.advance('LN');
  work.stage(47, THIRD);
  work.advance('EN');
  engine(work);
  work.advance('ST');
  work.stage(34, THIRD);
  work.advance('WH');
  sentBack(work);
  work.advance('WH');
  wheels(work);
  work.advance('BD');
  work.stage(22, FIRST);
  work.advance('EL');
  work.stage(8, SECOND);
  work.advance('PR');
  proving(work);
};

/** A ball joint is worn: a value outside its limit fails by itself, and both sides are replaced while there is time. */
const strip = (work: CarWork): void => {
  work.goTo(70, '08:00');
  work.give(FIRST);
  work.operation('DN-010');
  work.say(DEMO_LEAD, {
    type: 'add-note',
    of: 'DN-010',
    text: 'From a barn at Tarn Bridge. Papers and all three numbers agree; the off-side sill is gone, the axle is dry.',
  });
  work.leave.add('DN-110');
  work.work();
  work.operation('DN-110', { people: ['oswin'], before: { 'K-09@FR': () => wornBallJoint(work) } });
  work.leave.clear();
  work.work();
};

const wornBallJoint = (work: CarWork): void => {
  const values = { 'axial play': '1.1', boot: 'yes' };
  work.say('oswin', { type: 'pass-check', check: 'K-09@FR', values });
  work.pass(20);
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-1',
    disposition: 'replace',
    reason: 'Worn past the limit. Both sides new; a set is on the shelf.',
  });
  work.say(DEMO_LEAD, { type: 'receive-part', part: 'P-34' });
};

/** Tightened with the wrench that will come back from the bench reading high: dampers and mounts have no room for it. */
const SET_BY_IT = ['J-117@L', 'J-117@R', 'J-120@L', 'J-120@R', 'J-121@L', 'J-121@R', 'J-220@L', 'J-220@R'];
const MOUNTS = ['J-509@L', 'J-509@R', 'J-510'];

const tightenedTooFar = (work: CarWork): void => {
  for (const joint of [...SET_BY_IT, ...MOUNTS])
    work.asides.set(joint, (by) =>
      work.tryAll(by, tightening(work.site(), joint, { only: TOOL_READS_HIGH })),
    );
};

/** Moved too soon: the gate says why not, and the answer stays on record. */
const engine = (work: CarWork): void => {
  work.goTo(41, '08:00');
  work.give(SECOND);
  work.leave.add('EN-100');
  work.work();
  work.inVain(DEMO_LEAD, { type: 'advance-car', to: 'ST' }, ['operation-unfinished', 'stopgap-in-place']);
  work.leave.clear();
  work.work();
};

/** On the first morning before its wheels a tube nut weeps: opened, which ends "bled", and the car goes back for it. */
const sentBack = (work: CarWork): void => {
  const joint = 'J-314@2';
  work.goTo(29, '08:10');
  work.say('ines', {
    type: 'report-finding',
    about: { kind: 'joint', key: joint },
    text: 'Weeps: a drop on the pedal box after the night.',
  });
  work.say('ines', { type: 'open-joint', joint, reason: 'to be cut off and flared again' });
  work.say(DEMO_LEAD, {
    type: 'send-back',
    to: 'ST',
    reason: 'A tube nut weeps at the master cylinder: flare, bleed and hold before it goes on its wheels.',
  });
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-2',
    disposition: 'rework',
    reason: 'New flare on the same pipe; it is long enough.',
  });
  work.pass(40);
  work.work();
};

/** One stud is pulled too far, and told at once; one look comes in late, from a tablet that was out of touch. */
const wheels = (work: CarWork): void => {
  const joint = 'J-230@FL';
  work.goTo(27, '08:00');
  work.give(THIRD);
  for (const key of ['WH-010', 'WH-020', 'WH-030']) work.operation(key);
  work.asides.set(joint, (by) => overTorque(work, by, joint));
  work.leave.add(joint);
  work.operation('WH-040', { people: ['ines'] });
  work.leave.delete(joint);
  work.asides.delete(joint);
  work.pass(55);
  const [look] = verifying(work.site(), joint);
  if (look === undefined) throw new Error(`nobody can look at ${joint}`);
  const { car: _car, ...told } = look;
  work.sayLate('oswin', told, { device: 'tablet-2', minutes: 41 });
  work.work();
};

/** Told at once, with what was read; that stud renewed. Nobody writes a better number over it. */
const overTorque = (work: CarWork, by: PersonId, joint: string): void => {
  const told = { fastener: 3, reading: '74', unit: 'lbf·ft', tool: 'T-08' } as const;
  work.say(by, { type: 'report-over-torque', joint, ...told });
  const again = {
    tool: 'T-08',
    passes: [
      [1, 3, 2, 4],
      [1, 3, 2, 4],
    ],
    readings: ['65', '64.5', '66', '65'],
  };
  work.inVain(by, { type: 'final-joint', joint, ...again }, ['doubt-needs-more']);
  work.pass(10);
  work.say(DEMO_LEAD, {
    type: 'decide-finding',
    finding: 'F-3',
    disposition: 'rework',
    reason: 'Stud and nut no. 3 out and binned, new ones, both passes again on all four.',
  });
  work.say(by, { type: 'open-joint', joint, fasteners: [3], reason: 'over-torqued, to be renewed' });
};

/** The engine runs; a dropped wrench casts its doubt on one strap; this morning the hot checks are under way. */
const proving = (work: CarWork): void => {
  const strap = 'J-702@2';
  work.goTo(2, '08:00');
  work.give(['ines', 'oswin']);
  work.operation('PR-010', { people: ['ines'] });
  work.operation('PR-020', { people: ['ines', 'oswin'] });
  work.goTo(2, '14:30');
  work.say('ines', {
    type: 'open-joint',
    joint: strap,
    reason: 'warm on the first start; face cleaned to bare metal',
  });
  work.say('oswin', {
    type: 'final-joint',
    joint: strap,
    tool: TOOL_DROPPED,
    passes: [[1]],
    readings: ['15.2'],
  });
  work.goTo(1, '08:30');
  work.operation('PR-030', { people: ['ines'] });
  work.say('ines', {
    type: 'add-note',
    of: 'PR-030',
    text: 'Idles at 810 hot, a little rich. No. 3 plug was oiled up: changed.',
  });
  work.goTo(0, '10:20');
  work.operation('PR-040', { people: ['ines'], linesDone: 1 });
};
