/** Words for torque evidence and hardware. */
import { either, numberOf, quoted, suspectWords } from './words';
import type { Sentences } from './words';

type Code =
  | 'no-value-yet'
  | 'method-does-not-fit'
  | 'tool-missing'
  | 'tool-does-not-fit'
  | 'tool-out-of-calibration'
  | 'tool-cycles-used-up'
  | 'tool-suspect'
  | 'setting-outside-tool-range'
  | 'adapter-length-unknown'
  | 'reading-below'
  | 'reading-above'
  | 'unit-doubtful'
  | 'unit-does-not-fit'
  | 'passes-missing'
  | 'pattern-not-followed'
  | 'readings-missing'
  | 'step-missing'
  | 'step-outside'
  | 'verify-method-differs'
  | 'hardware-wrong'
  | 'substitute-needs-lead'
  | 'hardware-spent'
  | 'lot-quarantined'
  | 'lot-expired'
  | 'lot-of-other-item'
  | 'lot-of-other-car'
  | 'must-be-new'
  | 'lot-not-quarantined';

/** `prevailing torque`: the drag of a lock nut is added. */
const methodWords = (method: string): string => (method === 'prevailing' ? 'prevailing torque' : method);

const numbers = (list: readonly number[]): string => list.join(' ');

export const torqueSentences: Sentences<Code> = {
  'no-value-yet': ({ joint }, called) =>
    `The plan has no torque for ${called(joint)} yet. It may be snug; a plan revision must give the value first.`,
  'method-does-not-fit': ({ joint, method, given }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} tightened ${method === 'firm' ? 'firm by hand' : `by ${methodWords(method)}`}; ${given} does not belong to that. Leave it out.`,
  'tool-missing': ({ joint, method }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} tightened by ${methodWords(method)}, and that takes a torque tool. Name it.`,
  'tool-does-not-fit': ({ tool, kind, joint, method }, called) =>
    `${tool} is a ${kind} tool; ${called(joint)} ${numberOf(called(joint)).is} tightened by ${methodWords(method)}. Take a tool that ${
      method === 'click' ? 'clicks or shows' : 'shows a reading'
    }.`,
  'tool-out-of-calibration': ({ tool, due, day }) =>
    due === null
      ? `${tool} has no calibration on record. Take another tool, or record its calibration.`
      : `${tool} is not in calibration on ${day}: its last counts to ${due}. Take another tool, or have it calibrated.`,
  'tool-cycles-used-up': ({ tool, cycles }) =>
    `${tool} has done its ${String(cycles)} cycles since calibration. Take another tool, or have it calibrated.`,
  'tool-suspect': ({ tool, reason, from }) =>
    `${tool} is suspect since ${from} (${suspectWords(reason)}). Take another tool until it has been tested.`,
  'setting-outside-tool-range': ({ tool, value, range }) =>
    `${value} lies outside what ${tool} can do (${range}). Take a tool with that value in its range.`,
  'adapter-length-unknown': ({ tool, adapter }) =>
    `${tool} has no length on record, so nobody can say what ${adapter === '' ? 'the adapter' : adapter} makes of its reading. Record the length to its handle mark, or go without.`,
  'reading-below': ({ joint, fastener, delivered, window }, called) =>
    `No. ${String(fastener)} of ${called(joint)} got ${delivered}; it must get ${window}. Go on to the value.`,
  'reading-above': ({ joint, fastener, delivered, window }, called) =>
    `No. ${String(fastener)} of ${called(joint)} got ${delivered}, over ${window}. Report it as over-torqued, renew it, and make the full pass again.`,
  'unit-doubtful': ({ joint, value, unit, plausible }, called) =>
    `${value} on ${called(joint)} would fit if ${plausible} were mixed up. Which unit does the tool show? Confirm ${unit}, or correct it.`,
  'unit-does-not-fit': ({ unit, wanted }) =>
    `${unit} is no torque; the value is in ${wanted}. Give a unit of torque.`,
  'passes-missing': ({ joint, wanted, given }, called) =>
    `${called(joint)} takes ${String(wanted)} pass${wanted === 1 ? '' : 'es'}, each with the order the fasteners were taken in; ${String(given)} given. Make ${wanted === 1 ? 'it' : 'them all'} in one sitting.`,
  'pattern-not-followed': ({ joint, pass, wanted, given }, called) =>
    `Pass ${String(pass)} of ${called(joint)} went ${given.length === 0 ? 'nowhere' : numbers(given)}; the order is ${numbers(wanted)}. Make the pass in that order.`,
  'readings-missing': ({ joint, what, wanted, given }, called) =>
    `${called(joint)} needs ${String(wanted)} ${wanted === 1 ? what.replace(/s$/u, '') : what}; ${String(given)} given. Give ${wanted === 1 ? 'it' : 'one for each fastener'}.`,
  'step-missing': ({ joint, step }, called) =>
    `${called(joint)}: the step “${step}” is not recorded. Do it and say so.`,
  'step-outside': ({ joint, step, value, window }, called) =>
    `${called(joint)}: ${step} is ${value}; it must be ${window}. Do that step again.`,
  'verify-method-differs': ({ joint, wanted, given }, called) =>
    `${called(joint)} ${numberOf(called(joint)).is} verified ${wanted}, not ${given}. Verify ${numberOf(called(joint)).it} that way.`,
  'hardware-wrong': ({ joint, item, planned, substitutes }, called) =>
    `${called(item)} does not belong in ${called(joint)}. It takes ${either(planned.map(called))}${
      substitutes.length === 0
        ? ''
        : `; what may stand in: ${either(substitutes)}, where the plan allows it here`
    }.`,
  'substitute-needs-lead': ({ joint, item, instead }, called) =>
    `${called(item)} instead of ${called(instead)} in ${called(joint)} takes a lead's signature. A lead signs it.`,
  'hardware-spent': ({ joint, item, fastener, rule }, called) =>
    `${called(item)} ${fastener === null ? '' : `at no. ${String(fastener)} `}of ${called(joint)} is spent (${rule}). Fit a new one.`,
  'lot-quarantined': ({ lot, item, reason }, called) =>
    `Lot ${lot} of ${called(item)} is kept apart: ${quoted(reason)}. Take another lot, or a lead clears it.`,
  'lot-expired': ({ lot, item, expired }, called) =>
    `Lot ${lot} of ${called(item)} was good until ${expired}. Take another lot.`,
  'lot-of-other-item': ({ lot, item, holds }, called) =>
    `Lot ${lot} holds ${called(holds)}, not ${called(item)}. Take a lot of the right item.`,
  'lot-of-other-car': ({ lot, item, car }, called) =>
    `Lot ${lot} of ${called(item)} came off the donor of ${car} and is put aside for it. Take another lot, or share this one with all cars on the donor page of ${car}.`,
  'must-be-new': ({ item, rule, joint }, called) =>
    joint === null
      ? `${called(item)}: ${rule}. What came off a donor was fitted before and is not good again. Throw it away and take new ones.`
      : `${called(item)} of ${called(joint)}: ${rule}. What came off a donor was fitted before. Take new ones, from another lot.`,
  'lot-not-quarantined': ({ lot }) => `Lot ${lot} is not kept apart, so there is nothing to clear.`,
};
