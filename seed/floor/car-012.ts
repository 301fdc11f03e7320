/** C54-012, bottle green, at the gate before its wheels, which is closed for five different kinds of reason. */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import { tightening } from '@/seed/acts';
import { DEMO_LEAD, DEMO_OWNER, TOOL_RUN_OUT } from '@/seed/demo-shop';
import { CarWork } from './car-work';
import type { Floor } from './car-work';

const FIRST: readonly PersonId[] = ['ines', 'tobit'];
const SECOND: readonly PersonId[] = ['tobit', 'oswin'];

export const CAR_012 = 'C54-012';
/** Its idler bracket: only snug. */
export const JOINT_ONLY_SNUG = 'J-213';

export const buildCar012 = (floor: Floor, plan: string): void => {
  const work = new CarWork(floor, CAR_012, FIRST);
  work.goTo(57, '09:00');
  const options = { axle: 'rebuilt', heater: 'fitted' };
  work.say(DEMO_LEAD, { type: 'start-car', plan, chassis: CAR_012, colour: 'bottle', options });
  work.stage(56, FIRST);
  work.advance('FR');
  work.stage(48, SECOND);
  work.advance('AX');
  work.stage(38, FIRST);
  work.advance('LN');
  work.stage(30, SECOND);
  work.advance('EN');
  work.stage(22, FIRST);
  work.advance('ST');
  steering(work);
  thisWeek(work);
};

/** Everything of the stage but the cables and one bracket; two things are tried that the rules don't take. */
const steering = (work: CarWork): void => {
  work.goTo(8, '08:00');
  work.give(FIRST);
  work.say(DEMO_LEAD, { type: 'choose-option', option: 'firewall', choice: 'bought' });
  for (const key of ['ST-015', 'ST-020', 'ST-030']) work.operation(key, { people: ['tobit'] });
  work.operation('ST-040', { people: ['tobit'], before: { 'J-320': () => toolRunOut(work) } });
  work.leave.add('J-212');
  work.operation('ST-070', { people: ['ines'] });
  work.inVain('ines', { type: 'verify-joint', joint: 'J-212', method: 're-applied', tool: 'T-06' }, [
    'not-independent',
  ]);
  work.look('J-212', 'oswin');
  work.leave.delete('J-212');
  work.leave.add(JOINT_ONLY_SNUG).add('ST-110');
  const snugFirst = (): void => work.say('ines', { type: 'snug-joint', joint: JOINT_ONLY_SNUG });
  work.operation('ST-080', { people: ['ines'], before: { [JOINT_ONLY_SNUG]: snugFirst } });
  work.work();
};

/** The wrench in his hand is out of calibration; he takes another. */
const toolRunOut = (work: CarWork): void => {
  const [claim] = tightening(work.site(), 'J-320');
  if (claim?.type !== 'final-joint') throw new Error('no evidence for J-320');
  const { car: _car, ...told } = claim;
  work.inVain('tobit', { ...told, tool: TOOL_RUN_OUT }, ['tool-out-of-calibration']);
};

/** The five reasons, as they came about. Oswin was on none of it, so that he may look at all of it. */
const thisWeek = (work: CarWork): void => {
  struck(work);
  openedForACable(work);
  work.goTo(1, '10:30');
  work.say('tobit', {
    type: 'place-stopgap',
    what: 'tie wrap on the clutch pipe',
    quantity: 2,
    where: 'bellhousing, left side, until its clip is here',
  });
  work.goTo(0, '08:40');
  work.say(DEMO_LEAD, {
    type: 'fail-check',
    check: 'K-52',
    values: { travel: '9', shoes: 'yes', release: 'yes' },
    reason: 'Nine clicks on my walk round: the cable has settled.',
  });
  work.goTo(0, '09:15');
  work.say(DEMO_OWNER, {
    type: 'place-hold',
    scope: 'gate',
    reason: 'The customer sits in it this morning: pedals and column must suit before it goes down.',
  });
};

/** Ines wrote the readings of one joint under another, sees it herself, and strikes it. */
const struck = (work: CarWork): void => {
  work.goTo(2, '10:20');
  const found = Object.entries(work.row.signatures).find(
    ([, { act, subject }]) => act === 'final-joint' && subject === JOINT_ONLY_SNUG,
  );
  work.say('ines', {
    type: 'strike-signature',
    signature: found?.[0] ?? '',
    reason: 'These are the readings of J-212. The idler bracket was only run up.',
  });
};

/** The cross-member comes down for the speedometer cable and goes back; its neighbour was not tried since. */
const openedForACable = (work: CarWork): void => {
  const joint = 'J-511';
  work.goTo(2, '12:50');
  work.say('ines', {
    type: 'open-joint',
    joint,
    reason: "down a finger's breadth for the speedometer cable",
  });
  work.operation('ST-110', { people: ['ines'] });
  work.pass(5);
  work.tryAll('ines', tightening(work.site(), joint));
  work.look(joint, 'oswin');
  work.say('ines', {
    type: 'add-note',
    of: 'ST-110',
    text: 'Speedometer cable goes above the cross-member: below it the bend was too sharp.',
  });
};
