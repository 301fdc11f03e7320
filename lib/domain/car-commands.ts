/** Commands about one car. */
import { BODY, EVIDENCE, EYES, GATE, LOOK, NEEDS, START, TIGHTEN, TRUST } from './base/refusal-groups';
import { LEAD, LEADS, OWNER, assurance, note, warning } from './command-rule';
import type { CommandRule } from './command-rule';
import type { CarClaim } from './commands';

export const CAR_COMMANDS: Readonly<Record<CarClaim['type'], CommandRule>> = {
  // the car as a whole
  'start-car': assurance('car', LEADS, 'a car is begun on a plan revision', [
    'already-there',
    'choice-unknown',
  ]),
  'choose-option': assurance('car', LEADS, 'an option that the plan offers is chosen', [
    'option-already-chosen',
    'choice-unknown',
  ]),
  'advance-car': assurance('car', LEAD, 'the car passes its stage gate', [
    'last-gate',
    'one-stage-at-a-time',
    'room-full',
    ...GATE,
  ]),
  'send-back': warning('car', LEAD, 'the car goes back to an earlier stage'),
  'deliver-car': assurance('car', OWNER, 'the car is delivered', [
    'car-delivered',
    'not-last-gate',
    'part-owed',
    ...GATE,
  ]),
  'place-hold': warning('car', 'anyone', 'the car, a piece of work or a part is stopped'),
  'release-hold': assurance('car', LEADS, 'a hold is over', ['hold-already-released']),
  assign: note('car', LEADS, 'a job or a stage is given to people, or no longer', []),
  'add-note': note('car', 'anyone', 'a remark', []),
  'add-photo': note('car', 'anyone', 'a photo was taken', []),

  // operations
  'start-operation': assurance('car', 'anyone', 'an operation begins', [
    'operation-already-running',
    'operation-already-finished',
    'stale-run',
    'clock-running',
    ...START,
  ]),
  'join-operation': assurance('car', 'anyone', 'another person is on it too', [
    'operation-not-running',
    'already-on-it',
    'clock-running',
    'not-qualified',
    'hold-stands',
  ]),
  'pause-operation': warning('car', 'anyone', 'work stops, and how it was left'),
  'leave-operation': warning('car', 'anyone', 'one person steps out; who is last leaves the work paused'),
  'resume-operation': assurance('car', 'anyone', 'work goes on', [
    'operation-not-running',
    'operation-already-running',
    'clock-running',
    ...START,
  ]),
  'take-over-operation': assurance('car', 'anyone', 'someone else goes on with it', [
    'operation-not-running',
    'already-on-it',
    'clock-running',
    ...START,
  ]),
  'finish-operation': assurance('car', 'anyone', 'everything it means is done', [
    'operation-not-running',
    'stale-run',
    'not-on-it',
    'crew-too-small',
    'hold-stands',
    'lot-of-other-car',
    'value-unreadable',
    'lot-of-other-item',
    'lot-quarantined',
    'lot-expired',
    ...BODY,
  ]),

  // joints
  'snug-joint': assurance('car', 'anyone', 'fitted and run up to contact', ['level-already', ...TIGHTEN]),
  'final-joint': assurance('car', 'anyone', 'brought to final torque, with the evidence', [
    'level-already',
    'slave-part-in-joint',
    'doubt-needs-more',
    ...TIGHTEN,
    ...NEEDS,
    ...EVIDENCE,
  ]),
  'verify-joint': assurance('car', 'anyone', 'a second person has made sure', [
    'level-already',
    'joint-not-final',
    'joint-in-doubt',
    'not-independent',
    'verify-method-differs',
    ...EYES,
  ]),
  'recheck-joint': assurance('car', 'anyone', 'tried again with a good tool; nothing moved', [
    'joint-not-final',
    'nothing-to-recheck',
    'doubt-needs-more',
    'no-work-names-joint',
    ...EYES,
  ]),
  'reject-joint': warning('car', 'anyone', 'a second person does not agree'),
  'open-joint': warning('car', 'anyone', 'fasteners were loosened'),
  'report-disturbed': warning('car', 'anyone', 'a stripe is broken, or a fastener moved'),
  'report-over-torque': warning('car', 'anyone', 'a fastener got more than the window allows'),

  // checks, findings, changes
  'begin-check': assurance('car', 'anyone', 'a timed check begins', LOOK),
  'pass-check': assurance(
    'car',
    'anyone',
    'a check is passed; a value outside its limits fails it all the same',
    ['value-missing', 'value-unreadable', 'check-not-begun', 'check-too-short', ...TRUST, ...LOOK],
  ),
  'fail-check': warning('car', 'anyone', 'a check is failed'),
  'report-finding': warning('car', 'anyone', 'something is wrong with a part, a joint or a place'),
  'decide-finding': assurance('car', LEADS, 'what is done about a finding', [
    'finding-already',
    'never-concede',
  ]),
  'close-finding': assurance('car', 'anyone', "a finding's work is done", [
    'finding-already',
    'finding-undecided',
    'change-undecided',
    'check-not-clear',
    'joint-below-level',
    'joint-in-doubt',
    'part-absent',
  ]),
  'ask-change': note('car', 'anyone', 'a departure from the plan is asked for', []),
  'decide-change': assurance('car', LEADS, 'a change is approved or declined', [
    'change-already',
    'approver-not-independent',
  ]),

  // stopgaps, conditions, parts
  'place-stopgap': warning('car', 'anyone', 'a temporary fixing went in'),
  'remove-stopgap': assurance('car', 'anyone', 'a temporary fixing came out', ['removed-more-than-placed']),
  'set-condition': assurance('car', 'anyone', 'a condition that no work sets is true', [
    'condition-already',
    'condition-set-by-work',
    ...BODY,
  ]),
  'clear-condition': warning('car', 'anyone', 'a condition is no longer true'),
  'receive-part': assurance('car', 'anyone', 'a part is here and good', [
    'part-already',
    'part-away',
    'look-not-said',
    'part-not-given',
    'item-not-this-part',
    'lot-of-other-item',
    'lot-of-other-car',
    'lot-quarantined',
    'lot-expired',
  ]),
  'fit-part': assurance('car', 'anyone', 'a part is on the car', [
    'part-already',
    'part-absent',
    'part-away',
    'part-not-looked-over',
    'part-not-taken-into-work',
    'finding-on-part',
    'hold-stands',
    'option-undecided',
  ]),
  'take-part': warning('car', 'anyone', 'a part came off, perhaps for another car'),

  // kits: books give way to the box
  'pick-kit': note('car', 'anyone', 'hardware for a piece of work is in its box', [
    'operation-already-finished',
    'stale-run',
    'value-unreadable',
    'lot-of-other-item',
    'lot-of-other-car',
    'must-be-new',
    'lot-quarantined',
    'lot-expired',
  ]),
  'empty-kit': note('car', 'anyone', 'hardware of a box is back on the shelf', ['value-unreadable']),
  'report-kit-line': warning('car', 'anyone', 'hardware of a kit is the wrong one, damaged or not there'),

  // components
  'record-donor': note('car', LEADS, 'which vehicle the donor was', ['value-unreadable']),
  'grade-parts': note('car', 'anyone', 'how parts of the donor were found, and where they lie', [
    'part-already',
    'part-absent',
    'given-before',
  ]),
  'send-parts': warning('car', 'anyone', 'parts went out to be worked on'),
  'return-parts': note('car', 'anyone', 'parts came back from outside work, and how', [
    'part-not-away',
    'given-before',
  ]),

  // taking back
  'strike-signature': warning('car', 'anyone', 'a signature was wrong: own until verified, then the lead', [
    'strike-needs-lead',
  ]),
};
