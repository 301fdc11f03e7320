/**
 * Questions to the lead and their answers are remarks on the work they are about: both stay in the record, and stop
 * nothing. What can't go on is held instead.
 */
import type { Instant, PersonId } from './base/vocabulary';
import type { Car } from './car/rows';

const ASK = 'Ask: ';
const ANSWER = 'Answer: ';

export const askText = (question: string): string => `${ASK}${question}`;
export const answerText = (answer: string): string => `${ANSWER}${answer}`;

interface Said {
  readonly text: string;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface Ask extends Said {
  /** What it is about: mostly an operation. */
  readonly of: string;
  /** null = nobody has answered yet. */
  readonly answer: Said | null;
}

/** Every question on the car, the oldest first. An answer is for all that was asked before it about the same thing. */
export const asksOn = ({ notes }: Pick<Car, 'notes'>): readonly Ask[] => {
  const all = Object.values(notes).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const answers = all.filter(({ text }) => text.startsWith(ANSWER));
  return all
    .filter(({ text }) => text.startsWith(ASK))
    .map(({ of, text, by, at }) => {
      const answer = answers.find((each) => each.of === of && each.at > at);
      return {
        of,
        text: text.slice(ASK.length),
        by,
        at,
        answer:
          answer === undefined
            ? null
            : { text: answer.text.slice(ANSWER.length), by: answer.by, at: answer.at },
      };
    });
};
