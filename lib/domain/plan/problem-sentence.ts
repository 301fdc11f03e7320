/** What is wrong with a plan and what clears it, in words. */
import type { CuttingCode, Problem, ProblemCode, WorkCode } from './problem';

type Words = Readonly<Record<string, string>>;

/** One problem as a person reads it: what is wrong, then what clears it. */
export const problemSentence = (problem: Problem): string => sentence(problem.code, problem.details);

const meant = (nearest: string | undefined): string =>
  nearest === undefined || nearest === '' ? '' : ` Did you mean “${nearest}”?`;

const word = (words: Words, name: string): string => words[name] ?? '';

const sentence = (code: ProblemCode, words: Words): string => {
  const at = (name: string): string => word(words, name);
  switch (code) {
    case 'stages-missing':
      return 'A plan needs at least one stage. Write one under “stages”: “S1: { name: Frame }”.';
    case 'key-unreadable':
      return `“${at('key')}” can’t be a key. Begin with a letter and go on with letters, digits, dots, dashes or underscores; words of the language such as “constructor” are taken.`;
    case 'need-unreadable':
      return `“${at('text')}” is no need. Write an operation or check (FR-010), J-110 final, G-05 out, +weight, -fuel-in, wait FR-080, part P-26 or photo FR-060/stamp.`;
    case 'body-unreadable':
      return `“${at('text')}” is no body line. Write a verb (snug, final, retorque, recheck, open, check, place, out, set, clear, fit, photo) and one key.`;
    case 'reference-unreadable':
      return `“${at('text')}” is no reference. Write a key alone, or with its position: J-110@L, or J-110@* for all.`;
    case 'when-unreadable':
      return `“${at('text')}” can’t be read as a condition on options. Write option=choice, joined by and, or, not and brackets.`;
    case 'specification-unreadable':
      return `“${at('text')}” is no torque. Write 45 ± 3 N·m, 45 ± 5 % N·m, 190 to 230 lbf·ft (low before high, with the unit), or “no value yet”, or “no value published”.`;
    case 'window-unreadable':
      return `“${at('text')}” is no window. Write 90 ± 5 °, 190 to 230 lbf·ft, >= 25 mm or <= 0.1 mm, low before high; a step of a sequence may also say “done”.`;
    case 'limit-unreadable':
      return `“${at('text')}” begins like a number and can’t be read as a limit. Write >= 25 mm, <= 0.1 mm, 2 to 4 mm or 3 ± 1 mm, or a statement such as “boot whole”.`;
    case 'duration-unreadable':
      return `“${at('text')}” is no duration. Write a number and s, min, h or d: 16 h.`;
    case 'reuse-unreadable':
      return `“${at('text')}” says nothing about reuse. Write “once fitted”, “once final”, “3 times” or “always”.`;
    case 'repeat-unusable':
      return `Nothing can stand ${at('repeat')} times on a car. Write sides, corners, or a whole number from 1 to ${at('most')}.`;
    case 'length-unreadable':
      return `“${at('text')}” is no length. Write a number and mm, cm, m or in: 3150 mm, 6 m, 1-1/8 in.`;
    case 'pieces-unreadable':
      return `“${at('text')}” says no pieces. Write how many, from 1 to ${at('most')}, and how long: 2 × 3150 mm.`;
    case 'key-used-twice':
      return `“${at('key')}” already names something under ${at('first')}. Give this one under ${at('second')} a key of its own: one key means one thing.`;
    case 'reference-dangling':
      return `There is no ${at('wanted')} “${at('key')}” in this plan.${meant(at('nearest'))} Correct the key, or add the ${at('wanted')}.`;
    case 'reference-wrong-kind':
      return `“${at('key')}” is a ${at('kind')}; here stands the key of a ${at('wanted')}. Name a ${at('wanted')} instead.`;
    case 'need-incomplete':
      return `“${at('key')}” is a ${at('kind')}, and its key alone doesn’t say what is needed of it. Write “${at('write')}”.`;
    case 'photo-unknown':
      return `${at('operation')} takes no photo “${at('slot')}”.${meant(at('nearest'))} Add “photo ${at('slot')}” to its body, or correct the name.`;
    case 'option-unknown':
      return `The plan offers no option “${at('option')}”.${meant(at('nearest'))} Correct it, or add it under options.`;
    case 'choice-unknown':
      return `“${at('choice')}” is no choice of the option ${at('option')} (${at('choices')}).${meant(at('nearest'))} Correct it, or add the choice.`;
    case 'usual-not-a-choice':
      return `The usual choice “${at('usual')}” is not among the choices (${at('choices')}).${meant(at('nearest'))} Take one of them.`;
    case 'position-unknown':
      return at('positions') === ''
        ? `“${at('key')}” has no positions. Leave out “@${at('position')}”.`
        : `“${at('key')}” has no position “${at('position')}”. Take one of ${at('positions')}, or * for all.`;
    case 'position-unsettled':
      return `It is not settled which “${at('key')}” is meant here: the two are repeated differently. Write ${at('key')}@ with one of ${at('positions')}, or ${at('key')}@* for all.`;
    default:
      return workSentence(code, words);
  }
};

/** The order of work, stopgaps, joints and checks; closed, so that a new code can't be left without words. */
const workSentence = (code: WorkCode | CuttingCode, words: Words): string => {
  const at = (name: string): string => word(words, name);
  switch (code) {
    case 'cycle':
      return `Each of these waits for the next, so none can ever start or finish: ${at('cycle')}. Take out one of the needs.`;
    case 'need-never-in-time':
      return `“${at('need')}” is needed ${gate(words)}, but ${at('operation')} may not start before stage ${at('stage')}, which is later. Move the work or the need, or let ${at('operation')} start ahead of its stage.`;
    case 'need-of-later-stage':
      return `“${at('need')}” is needed ${gate(words)}, but ${at('operation')} belongs to the later stage ${at('stage')}: the car waits until somebody works ahead. Move ${at('operation')}, or make this due later.`;
    case 'due-before-stage':
      return `This is due at the gate of ${at('due')}, before ${at('operation')} of stage ${at('stage')} that does it. Make it due at ${at('stage')} or later, or move the operation.`;
    case 'wait-without-time':
      return `${at('operation')} names no waiting time, so nothing is waited for. Give it “wait: 16 h”, or need it without “wait”.`;
    case 'condition-never-set':
      return `Nothing in this plan sets “${at('condition')}”. Add “set ${at('condition')}” to the body of the operation that brings it about.`;
    case 'cleared-for-good':
      return `Opening ${at('joint')} ends “${at('condition')}”, and ${at('operation')}, which sets it, may not be run again. Give ${at('operation')} “redo: true” or “repeatable: true”.`;
    case 'irreversible-unmeasured':
      return `${at('operation')} can’t be undone and no measured check stands before it or in it. Name one in its needs or body.`;
    case 'stopgap-never-out':
      return `${at('operation')} places ${at('stopgap')} and no operation takes it out. Add “out ${at('stopgap')}” to a body.`;
    case 'stopgap-never-placed':
      return `${at('operation')} takes out ${at('stopgap')} and no operation places it. Add “place ${at('stopgap')}” to a body, or mark it “adHoc: true”.`;
    case 'stopgap-out-before-placed':
      return `${at('stopgap')} must be out by ${at('outBy')}, but ${at('operation')} places it in the later stage ${at('stage')}. Name a stage from ${at('stage')} on.`;
    case 'stopgap-out-late':
      return `${at('stopgap')} must be out by ${at('outBy')}, but ${at('operation')} takes it out only in the later stage ${at('stage')}. Move that line, or name a later stage.`;
    case 'pattern-not-each-once':
      return `The tightening order must name each fastener from 1 to ${at('fasteners')} once. Correct the numbers or the count of fasteners.`;
    case 'torque-missing':
      return 'This joint names no torque. Write one with its source, or “no value yet”, or “no value published” with method firm.';
    case 'torque-unit':
      return `“${at('text')}” is in ${at('unit')}, which is no torque. Write N·m, lbf·ft or lbf·in.`;
    case 'torque-without-source':
      return `Nothing says where “${at('text')}” is from. Add the source, or say “no value yet”.`;
    case 'no-value-yet':
      return at('dueLevel') === 'snug'
        ? 'This joint has no value yet; due at snug it can do without.'
        : `This joint is due at ${at('dueLevel')} and without a value can only be snug. Write the torque with its source before its gate.`;
    case 'firm-with-value':
      return 'Method firm is for joints whose source publishes no value. Write “torque: no value published”, or take the method of a torque tool.';
    case 'no-value-not-firm':
      return `Where no value is published a tool of method ${at('method')} has nothing to be set to. Take method firm, or find the value.`;
    case 'angle-missing':
      return 'Method angle needs the turn after the seat torque. Add “angle: 90 ± 5 °”.';
    case 'angle-unit':
      return `“${at('text')}” is in ${at('unit')}, which is no angle. Write it in °.`;
    case 'sequence-missing':
      return 'Method sequence needs its steps. Add them under “sequence”, each with its window or “done”.';
    case 'joint-not-worked':
      return `No operation names ${at('joint')}, so nobody can do it. Add “snug ${at('joint')}” or “final ${at('joint')}” to a body.`;
    case 'joint-never-there':
      return `${at('joint')} is due at ${at('dueLevel')} and no operation brings it there. Add “${at('verb')} ${at('joint')}” to a body, or name a lower dueLevel.`;
    case 'critical-without-verify':
      return 'A critical joint needs a second person, and nothing says how. Add “verify: witnessed”, “re-applied” or “seen”.';
    case 'verified-without-verify':
      return 'This joint is due verified, and nothing says how. Add “verify: witnessed”, “re-applied” or “seen”.';
    case 'hardware-uneven':
      return `${at('quantity')} of ${at('item')} can’t be shared evenly by ${at('fasteners')} fasteners. Correct the count, or say “per: joint”.`;
    case 'check-not-worked':
      return `No operation names ${at('check')}, so nobody can do it. Add “check ${at('check')}” to a body.`;
    case 'check-in-several':
      return `${at('check')} stands in the bodies of ${at('operations')}; once clear it is clear for all of them. Keep it in one, or give the others checks of their own.`;
    case 'limit-without-source':
      return `Nothing says where the limits of ${at('check')} are from. Add the source.`;
    default:
      return cuttingSentence(code, words);
  }
};

const cuttingSentence = (code: CuttingCode, words: Words): string => {
  const at = (name: string): string => word(words, name);
  switch (code) {
    case 'pieces-without-lengths':
      return `Pieces are cut from ${at('item')}, and nothing says from which lengths. Add “cut: { lengths: [6 m], kerf: 3 mm }” to the item.`;
    case 'piece-too-long':
      return `This piece of ${at('length')} mm is longer than what ${at('item')} leaves between its ends, ${at('room')} mm. Correct the piece, or add a longer length to the item.`;
    case 'pieces-against-quantity':
      return `The pieces of ${at('item')} come to ${at('sum')} m, and ${at('operation')} says that it uses up ${at('quantity')}. Correct the pieces or the quantity.`;
    case 'pieces-without-quantity':
      return `Pieces are cut from ${at('item')}, and ${at('operation')} does not say that it uses any, so none is bought for it. Add “${at('item')}: ${at('sum')} m” to its consumables.`;
    default:
      return unspoken(code);
  }
};

const gate = (words: Words): string =>
  word(words, 'due') === '' ? 'before the first stage' : `by the gate of ${word(words, 'due')}`;

/** A code that gets here was forgotten above, and the type says so first. */
const unspoken = (code: never): string => code;
