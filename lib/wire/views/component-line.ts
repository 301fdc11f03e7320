/** What happened to components, in the shop's words. */
import { agreeing } from '@/lib/domain/base/words';
import type { Outcome } from '@/lib/domain/car/component-rows';
import type { ComponentPayload } from '@/lib/domain/component-payload';
import type { Words } from './event-words';
import type { EventLine } from './log';

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  done: 'the work is done',
  'not-done': 'the work is not done',
  damaged: 'it is damaged',
};

export const componentLine = (event: ComponentPayload, { thing }: Words): EventLine => {
  const name = thing(event.part);
  switch (event.type) {
    case 'part-graded': {
      const said = [
        event.grade === null ? 'is not graded' : `is graded ${event.grade}`,
        ...(event.place === null ? [] : [`lies in ${event.place}`]),
        ...(event.serial === null ? [] : [`number ${event.serial}`]),
      ];
      return pieceLine(
        event.state === 'present' ? 'passed' : 'hint',
        name,
        `${said.join(', ')}${event.note === null ? '' : `: ${event.note}`}`,
      );
    }
    case 'part-sent':
      return pieceLine('vendor', name, `is out on trip ${event.trip}: ${event.work}`);
    case 'part-returned':
      return pieceLine(
        event.how === 'done' ? 'vendor' : 'owed',
        name,
        `is back from trip ${event.trip}; ${OUTCOME_WORDS[event.how]}${event.note === null ? '' : `: ${event.note}`}`,
      );
    case 'part-received': {
      const off = event.from === undefined ? '' : `, off ${event.from}`;
      const number = event.serial === undefined ? '' : `, number ${event.serial}`;
      const looked = event.looked === undefined ? '' : `: ${event.looked}`;
      return pieceLine('vendor', name, `is here and good${off}${number}${looked}`);
    }
  }
};

const pieceLine = (sign: EventLine['sign'], thing: string, says: string): EventLine => ({
  sign,
  thing,
  says: agreeing(thing, says),
});
