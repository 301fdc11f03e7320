/** What happened, in a few words each: for the lines under an accepted command. */
import { donorWords } from '@/lib/domain/car/donor-identity';
import { all } from '@/lib/domain/base/words';
import type { SawnBar, SawnPiece } from '@/lib/domain/shop/sawn';
import type { Drawn, Recount } from '@/lib/domain/shop/stock';
import type { Event } from '@/lib/domain/events';
import { OUT_WORDS, keptWords, placeWords } from '@/lib/domain/shop/stock-words';
import { supplyWords } from './supply-words';

/** Exhaustive: an event without words does not compile. */
export const eventWords = (event: Event): string =>
  event.stream === 'shop' ? shopWords(event) : carWords(event);

type ShopEvent = Extract<Event, { stream: 'shop' }>;
type CarEvent = Extract<Event, { stream: 'car' }>;

const shopWords = (event: ShopEvent): string => {
  switch (event.type) {
    case 'person-added':
      return `${event.person.name} is on the books`;
    case 'person-qualified':
      return `${event.person} is qualified for ${event.qualification.key}`;
    case 'qualification-ended':
      return `${event.person} is qualified for ${event.key} up to ${event.last}, not after`;
    case 'person-renamed':
      return `${event.was} is called ${event.name} from now on`;
    case 'roles-changed':
      return `${event.person} is ${event.roles.join(', ')} from now on; was ${event.was.join(', ')}`;
    case 'person-removed':
      return `${event.person} has left`;
    case 'tool-added':
      return `tool ${event.tool.id} is on the books`;
    case 'adapter-added':
      return `adapter ${event.adapter.id} is on the books`;
    case 'tool-calibrated':
      return `${event.tool} is calibrated up to ${event.calibration.due}`;
    case 'tool-suspected':
      return `${event.tool} is suspect from ${event.interval.from} (${event.interval.reason})`;
    case 'tool-tested':
      return `${event.tool} was tested: off by ${event.low} to ${event.high} %`;
    case 'plan-released':
      return `cars may be begun on ${event.model} ${event.revision}`;
    case 'lot-received':
      return event.lot.quarantined === null
        ? `lot ${event.lot.id} is in`
        : `lot ${event.lot.id} is kept apart: ${event.lot.quarantined}`;
    case 'lot-quarantined':
      return `lot ${event.lot} is kept apart: ${event.reason}`;
    case 'lot-cleared':
      return `lot ${event.lot} may be used again`;
    case 'stock-received':
      return `${event.quantity} of ${event.item} came in`;
    case 'stock-put-back':
      return `${event.quantity} of ${placeWords(event)} went back to the shelf`;
    case 'stock-drawn':
      return `${event.quantity} of ${placeWords(event)} went: ${OUT_WORDS[event.reason]}`;
    case 'stock-counted':
      return `${event.counted} of ${placeWords(event)} were counted; the books had ${event.had}`;
    case 'stock-put-away':
      return `${placeWords(event)} lies in ${event.bin}`;
    case 'donor-hardware-kept':
      return `off the donor of ${event.donorOf}: ${all(event.lines.map(keptWords))}`;
    case 'donor-lot-shared':
      return `lot ${event.lot} off the donor of ${event.donorOf} is for any car`;
    case 'remnants-counted':
      return `rests of ${event.item} in the rack: ${event.lengths.join(', ') || 'none'}`;
    case 'bars-sawn':
      return `${event.item} sawn: ${event.bars.map(barWords).join('; ')}`;
    case 'pieces-recut':
      return `${event.item} to be cut again: ${event.pieces.map(pieceWords).join(', ')}`;
    case 'rate-set':
      return `an hour of the shop has its rate from ${event.rate.id}`;
    default:
      return supplyWords(event);
  }
};

const carWords = (event: CarEvent): string => {
  switch (event.type) {
    case 'car-started':
      return `car ${event.car} is begun`;
    case 'option-chosen':
      return `${event.option} is ${event.choice}`;
    case 'job-assigned':
      return `${event.job} is given to ${event.people.join(', ')}`;
    case 'note-added':
      return `a note on ${event.of}`;
    case 'photo-added':
      return `a photo of ${event.of}, ${event.slot}`;
    case 'operation-started':
      return `${event.operation} is begun, run ${event.run}`;
    case 'operation-joined':
      return `one more person is on ${event.operation}`;
    case 'operation-paused':
      return `${event.operation} is paused`;
    case 'operation-left':
      return `one person stepped out of ${event.operation}`;
    case 'operation-resumed':
      return event.takenOver ? `${event.operation} is taken over` : `${event.operation} goes on`;
    case 'operation-finished':
      return `${event.operation} is finished${usedWords(event.drawn)}`;
    case 'operation-due-again':
      return `${event.operation} is due again, run ${event.run}: ${event.because}`;
    case 'operation-reopened':
      return `${event.operation} is open again`;
    case 'hardware-fitted':
      return `hardware is in at ${event.joint}: ${fittedItems(event.fasteners).join(', ')}`;
    case 'joint-marked':
      return `${event.joint} is ${event.mark.level}`;
    case 'joint-rechecked':
      return `${event.joint} is rechecked`;
    case 'joint-opened':
      return `${event.joint} is open, cycle ${event.cycle}; it was ${event.was}`;
    case 'joint-doubted':
      return `${event.joint} in doubt: ${event.doubt.because}; remedy: ${event.doubt.remedy}`;
    case 'joint-over-torqued':
      return `${event.joint} no. ${event.fastener} is over-torqued: ${event.reading} ${event.unit}`;
    case 'mark-struck':
      return `${event.joint} loses ${event.signatures.length === 1 ? 'a signature' : `${event.signatures.length} signatures`}`;
    default:
      return matterWords(event);
  }
};

/** Items that went in, each once. */
const fittedItems = (
  fasteners: Readonly<Record<string, Readonly<Record<string, { readonly item: string }>>>>,
): readonly string[] => [
  ...new Set(Object.values(fasteners).flatMap((row) => Object.values(row).map(({ item }) => item))),
];

type JointOrWork =
  | 'car-started'
  | 'option-chosen'
  | 'job-assigned'
  | 'note-added'
  | 'photo-added'
  | `operation-${string}`
  | 'hardware-fitted'
  | `joint-${string}`
  | 'mark-struck';

const matterWords = (event: Exclude<CarEvent, { type: JointOrWork }>): string => {
  switch (event.type) {
    case 'check-begun':
      return `${event.check} is begun, round ${event.round}`;
    case 'check-passed':
      return `${event.check} is passed`;
    case 'check-failed':
      return `${event.check} FAILED: ${event.reason}`;
    case 'check-due-again':
      return `${event.check} is due again, round ${event.round}: ${event.because}`;
    case 'check-conceded':
      return `${event.check} is taken as it is by ${event.change}`;
    case 'stopgap-placed':
      return `${event.id} is in place, ${event.quantity} × ${event.what}`;
    case 'stopgap-removed':
      return `${event.quantity} of ${event.id} came out`;
    case 'stopgap-returned':
      return `${event.quantity} of ${event.id} count as in again`;
    case 'condition-set':
      return `${event.condition} is so: ${event.because}`;
    case 'condition-cleared':
      return `${event.condition} is no longer so: ${event.because}`;
    case 'part-fitted':
      return `${event.part} is fitted`;
    case 'part-unfitted':
      return `${event.part} counts as not fitted again`;
    case 'part-taken':
      return event.takenFor === null
        ? `${event.part} is taken off`
        : `${event.part} is taken for ${event.takenFor}`;
    case 'part-condemned':
      return `${event.part} must be replaced: ${event.finding}`;
    case 'finding-opened':
      return `finding ${event.finding} on ${event.about.key}: ${event.text}`;
    case 'finding-decided':
      return `finding ${event.finding}: ${event.disposition}`;
    case 'finding-closed':
      return `finding ${event.finding} is closed: ${event.because}`;
    case 'finding-reopened':
      return `finding ${event.finding} is open again: ${event.because}`;
    case 'change-asked':
      return `change ${event.change} is asked for: ${event.reason}`;
    case 'change-approved':
      return event.complete
        ? `change ${event.change} is approved`
        : `change ${event.change} has one approval and needs another`;
    case 'change-declined':
      return `change ${event.change} is declined: ${event.reason}`;
    case 'wait-ended':
      return `the wait after ${event.operation} is ended early by ${event.change}`;
    case 'hold-placed':
      return `hold ${event.hold}: ${event.reason}`;
    case 'hold-released':
      return `hold ${event.hold} is over`;
    case 'signature-struck':
      return `signature ${event.signature} is struck: ${event.reason}`;
    case 'gate-passed':
      return event.overridden.length === 0
        ? `gate ${event.stage} is passed`
        : `gate ${event.stage} is passed over ${event.overridden.join(', ')}: ${event.reason ?? ''}`;
    case 'car-sent-back':
      return `${event.car} is back in ${event.stages[0] ?? ''}; asked again: ${event.stages.join(', ')}`;
    case 'car-delivered':
      return `${event.car} is delivered`;
    case 'kit-picked':
      return `in the kit of ${event.operation}: ${event.lines.map(takenWords).join(', ') || 'nothing'}${downWords(event.emptied)}`;
    case 'kit-emptied':
      return `back from the kit of ${event.operation}: ${event.lines.map(takenWords).join(', ')}`;
    case 'kit-line-reported':
      return `${event.item} for the kit of ${event.operation} is ${event.what}`;
    case 'donor-recorded':
      return `the donor is ${donorWords(event) || 'not known'}`;
    case 'part-graded':
      return `${event.part} is graded ${event.grade ?? 'not yet'}${event.place === null ? '' : `, in ${event.place}`}`;
    case 'part-sent':
      return `${event.part} is out on trip ${event.trip}: ${event.work}`;
    case 'part-returned':
      return `${event.part} is back from trip ${event.trip}: ${event.how}`;
    case 'part-received':
      return `${event.part} is here and good${event.from === undefined ? '' : `, off ${event.from}`}`;
  }
};

const barWords = ({ from, length, pieces, left }: SawnBar): string =>
  `${from === 'rest' ? 'rest' : 'length'} of ${length} into ${pieces.map(pieceWords).join(', ')}${left === null ? '' : `, ${left} kept`}`;

const pieceWords = ({ car, piece, length, count }: SawnPiece): string =>
  `${String(count)} × ${piece} ${length} for ${car}`;

/** Of known lots only. */
const usedWords = (drawn: readonly Drawn[] = []): string => {
  const used = drawn.filter(({ lot }) => lot !== null);
  return used.length === 0 ? '' : `; used up: ${used.map(takenWords).join(', ')}`;
};

const downWords = (emptied: readonly Recount[] = []): string =>
  emptied.length === 0
    ? ''
    : `; the bin of ${[...new Set(emptied.map(({ item }) => item))].join(', ')} is down`;

const takenWords = ({ item, lot, quantity }: Drawn): string =>
  `${quantity} ${item}${lot === null ? '' : ` of lot ${lot}`}`;
