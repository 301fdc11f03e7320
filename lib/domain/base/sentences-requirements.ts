/** Words for requirements that are not met yet. */
import { conditionWords, either, numberOf, quoted } from './words';
import type { RefusalDetails } from './refusals';
import type { Sentences } from './words';

const REMEDY: Readonly<Record<string, string>> = {
  recheck: 'try it again with a good tool and record the recheck',
  retorque: 'torque it again in full',
  renew: 'open it, fit new hardware and torque it again',
};

const remedyText = (remedy: string, it: string): string => (REMEDY[remedy] ?? remedy).replace(/\bit\b/gu, it);

const DISPOSITION_WORK: Readonly<Record<string, string>> = {
  rework: 'do the rework',
  replace: 'fit the replacement',
  'repair-outside': 'get it back repaired',
  scrap: 'fit another part',
  misread: 'measure again',
  'use-as-is': 'get the change approved',
};

/** What was decided, as one says it. */
const DECIDED: Readonly<Record<string, string>> = {
  rework: 'rework',
  replace: 'a replacement',
  'repair-outside': 'repair outside',
  scrap: 'to scrap it',
  misread: 'to measure again',
  'use-as-is': 'use as it is',
};

type Code =
  | 'operation-unfinished'
  | 'joint-below-level'
  | 'joint-in-doubt'
  | 'joint-work-missing'
  | 'check-not-clear'
  | 'stopgap-in-place'
  | 'condition-not-true'
  | 'condition-true'
  | 'wait-running'
  | 'part-absent'
  | 'part-not-fitted'
  | 'photo-missing'
  | 'option-undecided'
  | 'finding-undecided'
  | 'finding-not-closed'
  | 'change-undecided'
  | 'part-owed';

export const requirementSentences: Sentences<Code> = {
  'operation-unfinished': ({ operation, status }, called) =>
    status === 'not started'
      ? `${called(operation)} is not started. Start and finish it.`
      : status === 'due again'
        ? `${called(operation)} is due again. Run it once more.`
        : `${called(operation)} is ${status}. Finish it.`,
  'joint-below-level': ({ joint, level, wanted }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} ${level} and must be ${wanted}. ${
      wanted === 'verified' && level === 'final'
        ? `A second person verifies ${numberOf(called(joint)).it}.`
        : `Bring ${numberOf(called(joint)).it} to ${wanted === 'verified' ? `final, then have ${numberOf(called(joint)).it} verified` : wanted}.`
    }`,
  'joint-in-doubt': ({ joint, because, remedy }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} in doubt: ${quoted(because)}. To clear it, ${remedyText(remedy, numberOf(called(joint)).it)}.`,
  'joint-work-missing': ({ joint, work }, called) =>
    work === 'open'
      ? `${called(joint)} ${numberOf(called(joint)).has} not been opened in this run. Open ${numberOf(called(joint)).it} and record that.`
      : work === 'recheck'
        ? `${called(joint)} ${numberOf(called(joint)).has} not been rechecked in this run. Try ${numberOf(called(joint)).it} again with a good tool.`
        : `${called(joint)} ${numberOf(called(joint)).has} not been torqued again in this run. Torque ${numberOf(called(joint)).it} again in full.`,
  'check-not-clear': ({ check, status }, called) => `${called(check)} ${CHECK_STATUS[status]}`,
  'stopgap-in-place': ({ stopgap, left, placed, what }) =>
    `${stopgap}: ${String(left)} of ${String(placed)} ${what} still in. Take ${left === 1 ? 'it' : 'them'} out and count.`,
  'condition-not-true': ({ condition }) =>
    `“${conditionWords(condition)}” is not so, and must be. Do the work that brings it about.`,
  'condition-true': ({ condition }) =>
    `“${conditionWords(condition)}” is so, and must not be. End it first, and record that.`,
  'wait-running': ({ operation, until }, called) =>
    until === null
      ? `The wait after ${called(operation)} has not begun. Finish that operation first.`
      : `The wait after ${called(operation)} runs until ${until}. Wait, or ask for a change that ends it.`,
  'part-absent': ({ part }, called) =>
    many(called(part))
      ? `${called(part)} are not here. Record them as received once they are here and good.`
      : `${called(part)} is not here. Record it as received once it is here and good.`,
  'part-not-fitted': ({ part }, called) =>
    `${called(part)} ${numberOf(called(part)).is} not fitted. Fit ${numberOf(called(part)).it} and record that.`,
  'photo-missing': ({ of, slot }, called) => `${called(of)} asks for a photo “${slot}”. Take it.`,
  'option-undecided': ({ option, choices }, called) =>
    `${called(option)} is not chosen. A lead chooses ${either(choices)}.`,
  'finding-undecided': ({ finding, about }, called) =>
    `${finding} about ${called(about)} is undecided. A lead decides what is done.`,
  'finding-not-closed': ({ finding, about, disposition }, called) =>
    `${finding} about ${called(about)}: ${DECIDED[disposition] ?? disposition} is decided and not closed. ${capital(
      DISPOSITION_WORK[disposition] ?? 'do its work',
    )}, then close it.`,
  'change-undecided': ({ change }) =>
    `${change} is asked for and undecided. Someone who neither asked nor did the work approves or declines it.`,
  'part-owed': ({ part, takenFor }, called) =>
    takenFor === ''
      ? `${called(part)} ${numberOf(called(part)).is} owed to this car. Receive and fit ${many(called(part)) ? 'others' : 'another'}.`
      : `${called(part)} ${numberOf(called(part)).was} taken for ${takenFor} and ${numberOf(called(part)).is} owed to this car. Receive and fit ${many(called(part)) ? 'others' : 'another'}.`,
};

const many = (thing: string): boolean => numberOf(thing).it === 'them';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const CHECK_STATUS: Readonly<Record<RefusalDetails['check-not-clear']['status'], string>> = {
  'not done': 'is not done. Do the check and record the result.',
  failed: 'failed. Decide its finding, do the work and pass the check in a new round.',
  'failed, decided': 'failed, and what is done is decided. Do the work and pass the check in a new round.',
  'failed, change asked':
    'failed, and a change is asked that takes it as it is. It is clear once that is approved.',
  'due again': 'is due again. Do the check and record the result.',
  running: 'is still running. Wait until its time is up, then record the result.',
};
