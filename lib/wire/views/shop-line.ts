/** What happened to the shop's own books, in the shop's words. */
import type { SawnBar, SawnPiece } from '@/lib/domain/shop/sawn';
import { all, conditionWords } from '@/lib/domain/base/words';
import type { ShopPayload } from '@/lib/domain/shop-payload';
import { OUT_WORDS, keptWords, placeWords } from '@/lib/domain/shop/stock-words';
import type { EventLine } from './log';
import { supplyLine } from './supply-line';
import { SUSPECT_WORDS } from './suspect-words';

type NameIn = (id: string) => string;

/** Exhaustive: an event without words does not compile. */
export const shopLine = (event: ShopPayload, person: NameIn, tool: NameIn, supplier: NameIn): EventLine => {
  switch (event.type) {
    case 'person-added':
      return line(
        'add',
        event.person.name,
        event.person.roles.length === 0
          ? 'is on the books, with no role yet'
          : `is on the books as ${all(event.person.roles)}`,
      );
    case 'person-qualified':
      return line(
        'passed',
        person(event.person),
        `is qualified for ${conditionWords(event.qualification.key)}`,
      );
    case 'qualification-ended':
      return line(
        'gclosed',
        person(event.person),
        `is qualified for ${conditionWords(event.key)} up to ${event.last} and no longer`,
      );
    case 'person-renamed':
      return line('hint', event.was, `is called ${event.name} from now on`);
    case 'roles-changed':
      return line(
        'hint',
        person(event.person),
        event.was.length === 0
          ? `is now ${all(event.roles)}; had no role before`
          : `is now ${all(event.roles)}; was ${all(event.was)}`,
      );
    case 'person-removed':
      return line('gclosed', person(event.person), 'has left');
    case 'tool-added':
      return line('add', event.tool.name, 'is on the books');
    case 'adapter-added':
      return line('add', event.adapter.name, 'is on the books');
    case 'tool-calibrated':
      return line('passed', tool(event.tool), `is calibrated up to ${event.calibration.due}`);
    case 'tool-suspected':
      return line('disturbed', tool(event.tool), `is suspect: ${SUSPECT_WORDS[event.interval.reason]}`);
    case 'tool-tested':
      return line('hint', tool(event.tool), `was tested: off by ${event.low} to ${event.high} %`);
    case 'plan-released':
      return line('passed', `${event.model} ${event.revision}`, 'is released: cars may be begun on it');
    case 'lot-received':
      return event.lot.quarantined === null
        ? line('add', `Lot ${event.lot.id}`, 'is in')
        : line('hold', `Lot ${event.lot.id}`, `is kept apart: ${event.lot.quarantined}`);
    case 'donor-hardware-kept':
      return line('add', `Off the donor of ${event.donorOf}`, all(event.lines.map(keptWords)));
    case 'donor-lot-shared':
      return line('hint', `Lot ${event.lot}`, `off the donor of ${event.donorOf} is for any car from now on`);
    case 'lot-quarantined':
      return line('hold', `Lot ${event.lot}`, `is kept apart: ${event.reason}`);
    case 'lot-cleared':
      return line('passed', `Lot ${event.lot}`, `may be used again: ${event.reason}`);
    case 'stock-received':
      return line('add', placeWords(event), `${event.quantity} came in${foundWords(event.found)}`);
    case 'stock-put-back':
      return line(
        'add',
        placeWords(event),
        `${event.quantity} went back to the shelf${foundWords(event.found)}`,
      );
    case 'stock-drawn':
      return line(
        'owed',
        placeWords(event),
        `${event.quantity} went, ${OUT_WORDS[event.reason]}${event.forCar === null ? '' : `, for ${event.forCar}`}`,
      );
    case 'stock-counted':
      return line(
        'passed',
        placeWords(event),
        event.counted === event.had
          ? `${event.counted} counted, as the books had it`
          : `${event.counted} counted, where the books had ${event.had}`,
      );
    case 'stock-put-away':
      return line('hint', placeWords(event), `lies in ${event.bin} from now on`);
    case 'remnants-counted':
      return line(
        'passed',
        event.item,
        event.lengths.length === 0
          ? 'no rests are in the rack'
          : `rests in the rack: ${event.lengths.join(', ')}`,
      );
    case 'bars-sawn':
      return line('passed', event.item, sawnText(event.bars));
    case 'pieces-recut':
      return line('due', event.item, `is cut again: ${event.pieces.map(pieceText).join(', ')}`);
    case 'rate-set':
      return line('hint', 'Rate of an hour', `is set from ${event.rate.id} on`);
    default:
      return supplyLine(event, supplier);
  }
};

const line = (sign: EventLine['sign'], thing: string, says: string): EventLine => ({ sign, thing, says });

const sawnText = (bars: readonly SawnBar[]): string => {
  const kept = bars.flatMap(({ left }) => left ?? []);
  const pieces = bars.flatMap((bar) => bar.pieces.map(pieceText)).join(', ');
  return `is sawn from ${bars.map(({ from, length }) => `${from === 'rest' ? 'a rest' : 'a length'} of ${length}`).join(', ')}: ${pieces}${kept.length === 0 ? '' : `; kept ${kept.join(', ')}`}`;
};

const pieceText = ({ car, piece, length, count }: SawnPiece): string =>
  `${String(count)} × ${piece} ${length} for ${car}`;

/** What had gone beyond what ever came was found, and is booked with the next goods. */
const foundWords = (found: string): string => (found === '0' ? '' : `; ${found} more had been found before`);
