/** A question to the lead about a piece of work, and its answer: remarks that the rulebook knows as such. */
import type { FormOf } from '@/components/act/form';
import { called, text } from '@/components/act/form';
import { answerText, askText } from '@/lib/domain/asks';
import { thingForms } from './things';

const ASKED = 'ask:';
const ANSWERED = 'answer:';

/** The key of an act that asks, or answers, about this thing. */
export const asking = (of: string): string => `${ASKED}${of}`;
export const answering = (of: string): string => `${ANSWERED}${of}`;

const ask: FormOf = ({ key }, desk, values) => {
  const of = key.slice(ASKED.length);
  const question = text(values, 'text');
  return {
    title: 'Ask the lead',
    button: 'Ask',
    tone: 'plain',
    fields: [
      {
        kind: 'text',
        name: 'text',
        label: 'What do you want to know?',
        hint: 'it stands with the lead’s own work until somebody answers; both stay in the record',
        wanted: true,
      },
    ],
    says: `The lead is asked about ${called(of, desk.operations[of]?.name)}.`,
    brings: [],
    missing: question === '' ? 'Write the question.' : null,
    claim: () => ({ type: 'add-note', car: desk.car, of, text: askText(question) }),
  };
};

const answer: FormOf = ({ key }, desk, values) => {
  const of = key.slice(ANSWERED.length);
  const said = text(values, 'text');
  return {
    title: `Answer about ${called(of, desk.operations[of]?.name)}`,
    button: 'Answer',
    tone: 'plain',
    fields: [{ kind: 'text', name: 'text', label: 'Answer', wanted: true }],
    says: `The question about ${called(of, desk.operations[of]?.name)} is answered.`,
    brings: [],
    missing: said === '' ? 'Write the answer.' : null,
    claim: () => ({ type: 'add-note', car: desk.car, of, text: answerText(said) }),
  };
};

/** Any remark: a question, an answer, or neither. */
export const noteForm: FormOf = (act, desk, values) =>
  (act.key.startsWith(ASKED) ? ask : act.key.startsWith(ANSWERED) ? answer : thingForms['add-note'])(
    act,
    desk,
    values,
  );
