/** Words for who may do what, and where the work stands. */
import { conditionWords, either, numberOf, quoted } from './words';
import type { Sentences } from './words';

type Code =
  | 'unknown-thing'
  | 'not-allowed'
  | 'unknown-person'
  | 'not-qualified'
  | 'not-independent'
  | 'approver-not-independent'
  | 'strike-needs-lead'
  | 'last-owner'
  | 'stage-not-reached'
  | 'hold-stands'
  | 'operation-not-running'
  | 'operation-already-running'
  | 'operation-already-finished'
  | 'already-on-it'
  | 'not-on-it'
  | 'clock-running'
  | 'crew-too-small'
  | 'no-work-names-joint'
  | 'stale-cycle'
  | 'stale-run'
  | 'stale-round'
  | 'level-already'
  | 'joint-not-final'
  | 'nothing-to-recheck'
  | 'doubt-needs-more'
  | 'slave-part-in-joint'
  | 'check-already-clear'
  | 'check-not-begun'
  | 'check-too-short'
  | 'value-missing'
  | 'value-unreadable'
  | 'removed-more-than-placed'
  | 'condition-set-by-work'
  | 'condition-already'
  | 'part-not-taken-into-work'
  | 'part-already'
  | 'finding-on-part'
  | 'finding-already'
  | 'never-concede'
  | 'change-already'
  | 'hold-already-released'
  | 'option-already-chosen'
  | 'choice-unknown'
  | 'already-there';

export const workSentences: Sentences<Code> = {
  'unknown-thing': ({ what, key }) =>
    what === 'photograph'
      ? `The shop holds no photograph “${key.slice(0, 12)}” of this car. Send it again, or give the rest without it.`
      : `There is no ${what} “${key}” here. Look at the name again.`,
  'not-allowed': ({ says, roles, actor }, _called, who) =>
    `${who(actor)} may not say “${says}”. That is for ${either(roles.map((role) => (role === 'owner' ? 'an owner' : `a ${role}`)))}.`,
  'unknown-person': ({ person }, _called, who) =>
    `“${who(person)}” is not on the shop's books. A lead or an owner adds them first.`,
  'not-qualified': ({ person, qualification, day }, _called, who) =>
    `${who(person)} does not hold “${qualification}” on ${day}. Someone who does takes this, or a lead records the qualification.`,
  'not-independent': ({ person, joint }, called, who) =>
    `${who(person)} had a hand in ${called(joint)} and can't verify it. Someone who did not fit, snug or torque it verifies.`,
  'approver-not-independent': ({ person, change }, _called, who) =>
    `${who(person)} asked for ${change} or did the work it is about. Someone else approves.`,
  'strike-needs-lead': ({ signature, actor }, _called, who) =>
    `${who(actor)} can't strike ${signature}: it is another's, is verified, or carries another's signature. A lead strikes it, with a reason.`,
  'last-owner': ({ person }, _called, who) =>
    `${who(person)} is the shop's only owner, and nobody else could let people in. Make somebody else an owner first.`,
  'stage-not-reached': ({ operation, stage, standsIn }, called) =>
    `${called(operation)} may not begin before the car stands in ${called(stage)}; it stands in ${called(standsIn)}. Advance the car first.`,
  'hold-stands': ({ hold, scope, reason }) =>
    `${hold} holds ${scope === 'gate' ? 'the car at its gate' : scope === 'work' ? 'all work' : 'this'}: ${quoted(reason)}. A lead releases it.`,
  'operation-not-running': ({ operation }, called) =>
    `${called(operation)} is not running. Start or resume it first.`,
  'operation-already-running': ({ operation }, called) =>
    `${called(operation)} is begun already. Join it, resume it, or take it over.`,
  'operation-already-finished': ({ operation }, called) =>
    `${called(operation)} is finished. Nothing asks for it again; if it was signed by mistake, strike the signature.`,
  'already-on-it': ({ operation, person }, called, who) =>
    `${who(person)} is on ${called(operation)} already. Go on with it.`,
  'not-on-it': ({ operation, person }, called, who) =>
    `${who(person)} is not on ${called(operation)}. Join it first.`,
  'clock-running': ({ person, car, operation }, called, who) =>
    `${who(person)} is at work on ${called(operation)} of ${car}, and a person has one running clock. Step out of it, pause or finish it first.`,
  'crew-too-small': ({ operation, crew, present }, called) =>
    `${called(operation)} takes ${String(crew)} people and ${String(present)} ${present === 1 ? 'is' : 'are'} on it. Another person joins first.`,
  'no-work-names-joint': ({ joint, act, operations }, called) => {
    const doing =
      act === 'snug'
        ? `runs up ${called(joint)}`
        : act === 'final'
          ? `takes ${called(joint)} to final`
          : `rechecks ${called(joint)}`;
    return operations.length === 0
      ? `No work in the plan ${doing}. The plan must name it in an operation's body first.`
      : `Nothing that is running now ${doing}. Start ${either(operations.map(called))}.`;
  },
  'stale-cycle': ({ joint, named, current }, called) =>
    `This is for cycle ${String(named)} of ${called(joint)}, which is in cycle ${String(current)}: it was opened since. Do it again for what is there now.`,
  'stale-run': ({ operation, named, current }, called) =>
    `This is for run ${String(named)} of ${called(operation)}, which is at run ${String(current)}. Look at it again.`,
  'stale-round': ({ check, named, current }, called) =>
    `This is for round ${String(named)} of ${called(check)}, which is at round ${String(current)}. Look at it again.`,
  'level-already': ({ joint, level }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} ${level} already. If ${numberOf(called(joint)).it === 'it' ? 'it was' : 'they were'} loosened, open ${numberOf(called(joint)).it} first; if the record is wrong, strike the signature.`,
  'joint-not-final': ({ joint, level }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} ${level}. Bring ${numberOf(called(joint)).it} to final first.`,
  'nothing-to-recheck': ({ joint }, called) =>
    `${called(joint)} ${numberOf(called(joint)).has} no doubt that a recheck would clear.`,
  'doubt-needs-more': ({ joint, remedy, because }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} in doubt: ${quoted(because)}. That takes more: ${
      remedy === 'renew' ? 'open it, fit new hardware, and torque it again' : 'torque it again in full'
    }.`,
  'slave-part-in-joint': ({ joint, stopgap }, called) =>
    `${stopgap} stands in ${called(joint)}, which can't pass snug while it is there. Take it out and fit the real part.`,
  'check-already-clear': ({ check }, called) =>
    `${called(check)} is passed already. If the record is wrong, strike the signature.`,
  'check-not-begun': ({ check }, called) => `${called(check)} must be held for a time. Begin it first.`,
  'check-too-short': ({ check, ready }, called) => `${called(check)} must hold until ${ready}. Wait.`,
  'value-missing': ({ check, value, limit }, called) =>
    `${called(check)} asks for “${value}” (${limit}). Give it.`,
  'value-unreadable': ({ field, text, wanted }) => `“${text}” for ${field} can't be read. Give ${wanted}.`,
  'removed-more-than-placed': ({ stopgap, left, removed }) =>
    left === 0
      ? `Nothing of ${stopgap} is in. If something was found, report it as placed first.`
      : `${String(removed)} can't come out of ${stopgap}: ${String(left)} ${left === 1 ? 'is' : 'are'} in. Count again.`,
  'condition-set-by-work': ({ condition, operations }, called) =>
    `“${conditionWords(condition)}” comes of work, not of saying so. Finish ${either(operations.map(called))}.`,
  'condition-already': ({ condition }) =>
    `“${conditionWords(condition)}” is so already. If it no longer is, report that first.`,
  'part-not-taken-into-work': ({ part, operations }, called) =>
    operations.length === 0
      ? `No work in the plan fits ${called(part)}. The plan must name it in an operation's body first.`
      : `Nothing that is running now fits ${called(part)}. Start ${either(operations.map(called))}.`,
  'part-already': ({ part, state }, called) =>
    `${called(part)} ${numberOf(called(part)).is} ${state === 'present' ? 'here' : state} already. If ${numberOf(called(part)).it === 'it' ? 'it came off, report it' : 'they came off, report them'} as taken first.`,
  'finding-on-part': ({ finding, part }, called) =>
    `${finding} about ${called(part)} is open, so ${numberOf(called(part)).it === 'it' ? 'it' : 'they'} can't be fitted. Settle the finding first.`,
  'finding-already': ({ finding, state }) =>
    `${finding} is ${state} already. Report a new finding if something is wrong again.`,
  'never-concede': ({ check }, called) =>
    `${called(check)} may never be taken as it is. Rework, replace, repair or scrap, then pass the check.`,
  'change-already': ({ change, state }) => `${change} is ${state} already. Ask for a new one.`,
  'hold-already-released': ({ hold }) =>
    `${hold} is released already. Place a new hold if something must stop.`,
  'option-already-chosen': ({ option, choice }, called) =>
    `${called(option)} is chosen already: ${choice}. Another choice is a change.`,
  'choice-unknown': ({ option, choice, choices }, called) =>
    `${called(option)} has no choice “${choice}”. Choose ${either(choices)}.`,
  'already-there': ({ what, key }) => `There is a ${what} “${key}” already. Take another name.`,
};
