/** Events of one car's stream: dispatch only, closed by the compiler. */
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';
import { donorRecorded, partGraded, partReceived, partReturned, partSent } from './components';
import { checkBegun, checkConceded, checkDueAgain, checkFailed, checkPassed } from './checks';
import {
  changeApproved,
  changeAsked,
  changeDeclined,
  findingClosed,
  findingDecided,
  findingOpened,
  findingReopened,
} from './findings';
import {
  hardwareFitted,
  jointDoubted,
  jointMarked,
  jointOpened,
  jointRechecked,
  markStruck,
  overTorqued,
} from './joints';
import { kitEmptied, kitLineReported, kitOver, kitPicked, kitUsed } from './kits';
import { gatePassed, sentBack } from './moves';
import {
  operationDueAgain,
  operationFinished,
  operationJoined,
  operationLeft,
  operationPaused,
  operationReopened,
  operationResumed,
  operationStarted,
  waitEnded,
} from './operations';
import { signed } from './signatures';
import {
  conditionChanged,
  holdPlaced,
  holdReleased,
  partChanged,
  signatureStruck,
  stopgapPlaced,
  stopgapRemoved,
  stopgapReturned,
} from './things';

export const carStarted = (event: Extract<CarEvent, { type: 'car-started' }>): Car => ({
  id: event.car,
  chassis: event.chassis,
  colour: event.colour,
  plan: event.plan,
  options: event.options,
  stage: 0,
  delivered: false,
  version: 1,
  operations: {},
  joints: {},
  checks: {},
  conditions: {},
  stopgaps: {},
  findings: {},
  changes: {},
  holds: {},
  parts: {},
  photos: {},
  signatures: {},
  gates: {},
  notes: {},
  assignments: {},
  kits: {},
  components: {},
});

export const evolveCar = (car: Car, event: CarEvent): Car => ({
  ...signed(changed(car, event), event),
  version: car.version + 1,
});

/** One command may bring several: those after the first are numbered. */
const photoKey = ({ photos }: Car, command: string): string => {
  let number = 1;
  let key = command;
  while (photos[key] !== undefined) key = `${command}/${String((number += 1))}`;
  return key;
};

const changed = (car: Car, event: CarEvent): Car => {
  switch (event.type) {
    case 'car-started':
      return car;
    case 'option-chosen':
      return { ...car, options: { ...car.options, [event.option]: event.choice } };
    case 'job-assigned':
      return { ...car, assignments: { ...car.assignments, [event.job]: { people: event.people } } };
    case 'note-added':
      return {
        ...car,
        notes: {
          ...car.notes,
          [event.meta.command]: { of: event.of, text: event.text, by: event.meta.by, at: event.meta.at },
        },
      };
    case 'photo-added':
      return {
        ...car,
        photos: {
          ...car.photos,
          [photoKey(car, event.meta.command)]: {
            of: event.of,
            slot: event.slot,
            hash: event.hash,
            by: event.meta.by,
            at: event.meta.at,
          },
        },
      };
    case 'operation-started':
      return operationStarted(car, event);
    case 'operation-joined':
      return operationJoined(car, event);
    case 'operation-paused':
      return operationPaused(car, event);
    case 'operation-left':
      return operationLeft(car, event);
    case 'operation-resumed':
      return operationResumed(car, event);
    case 'operation-finished':
      return kitOver(operationFinished(car, event), event.operation);
    case 'operation-due-again':
      return operationDueAgain(car, event);
    case 'operation-reopened':
      return operationReopened(car, event);
    case 'wait-ended':
      return waitEnded(car, event);
    case 'hardware-fitted':
      return kitUsed(hardwareFitted(car, event), event.kit, event.drawn ?? []);
    case 'joint-marked':
      return jointMarked(car, event);
    case 'joint-rechecked':
      return jointRechecked(car, event);
    case 'joint-opened':
      return jointOpened(car, event);
    case 'joint-doubted':
      return jointDoubted(car, event);
    case 'joint-over-torqued':
      return overTorqued(car, event);
    case 'mark-struck':
      return markStruck(car, event);
    case 'check-begun':
      return checkBegun(car, event);
    case 'check-passed':
      return checkPassed(car, event);
    case 'check-failed':
      return checkFailed(car, event);
    case 'check-due-again':
      return checkDueAgain(car, event);
    case 'check-conceded':
      return checkConceded(car, event);
    case 'stopgap-placed':
      return stopgapPlaced(car, event);
    case 'stopgap-removed':
      return stopgapRemoved(car, event);
    case 'stopgap-returned':
      return stopgapReturned(car, event);
    case 'condition-set':
    case 'condition-cleared':
      return conditionChanged(car, event);
    case 'part-fitted':
    case 'part-unfitted':
    case 'part-taken':
    case 'part-condemned':
      return partChanged(car, event);
    case 'finding-opened':
      return findingOpened(car, event);
    case 'finding-decided':
      return findingDecided(car, event);
    case 'finding-closed':
      return findingClosed(car, event);
    case 'finding-reopened':
      return findingReopened(car, event);
    case 'change-asked':
      return changeAsked(car, event);
    case 'change-approved':
      return changeApproved(car, event);
    case 'change-declined':
      return changeDeclined(car, event);
    case 'hold-placed':
      return holdPlaced(car, event);
    case 'hold-released':
      return holdReleased(car, event);
    case 'signature-struck':
      return signatureStruck(car, event);
    case 'gate-passed':
      return gatePassed(car, event);
    case 'car-sent-back':
      return sentBack(car, event);
    case 'car-delivered':
      return { ...car, delivered: true };
    case 'kit-picked':
      return kitPicked(car, event);
    case 'kit-emptied':
      return kitEmptied(car, event);
    case 'kit-line-reported':
      return kitLineReported(car, event);
    case 'donor-recorded':
      return donorRecorded(car, event);
    case 'part-graded':
      return partGraded(car, event);
    case 'part-sent':
      return partSent(car, event);
    case 'part-returned':
      return partReturned(car, event);
    case 'part-received':
      return partReceived(car, event);
  }
};
