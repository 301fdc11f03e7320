/** What somebody asked for, in words: for the log, where it was refused. Exhaustive: a command without words does not compile. */
import type { NameOf } from '@/lib/domain/base/sentences';
import { conditionWords } from '@/lib/domain/base/words';
import type { Claim, ClaimType } from '@/lib/domain/commands';
import type { Words } from './event-words';

/** `…` stands for what it was to be done to. */
const ASKED: Readonly<Record<ClaimType, string>> = {
  'add-person': 'Add … to the books',
  'qualify-person': 'Qualify …',
  'end-qualification': 'End a qualification of …',
  'rename-person': 'Rename …',
  'change-roles': 'Change the roles of …',
  'remove-person': 'Remove …',
  'add-tool': 'Add … to the tools',
  'add-adapter': 'Add … to the adapters',
  'record-calibration': 'Record a calibration of …',
  'suspect-tool': 'Report … as suspect',
  'release-plan': 'Release a plan',
  'receive-lot': 'Receive lot …',
  'quarantine-lot': 'Keep lot … apart',
  'clear-lot': 'Clear lot …',
  'approve-order': 'Approve the week’s order',
  'receive-order': 'Receive goods of an order',
  'promise-order': 'Say when an order comes',
  'end-order-line': 'End a line of an order',
  'credit-order': 'Record a credit',
  'receive-stock': 'Take … into stock',
  'count-stock': 'Count …',
  'draw-stock': 'Take … out of stock',
  'put-back': 'Put … back',
  'put-away': 'Put … away',
  'set-item': 'Set the terms of …',
  'set-supplier': 'Set the terms of …',
  'set-offer': 'Enter an offer of …',
  'end-offer': 'End the offer …',
  'import-items': 'Read in a file of items',
  'import-offers': 'Read in a file of offers',
  'pin-line': 'Insist on how … is ordered',
  'unpin-line': 'Order … as is cheapest again',
  'quote-outside': 'Enter the price of … at another firm',
  'set-rate': 'Set the rate of an hour',
  'start-car': 'Begin the car',
  'choose-option': 'Choose …',
  'advance-car': 'Advance',
  'send-back': 'Send back',
  'deliver-car': 'Deliver',
  'place-hold': 'Place a hold',
  'release-hold': 'Release …',
  assign: 'Give … to people',
  'add-note': 'Write a remark on …',
  'add-photo': 'Photograph …',
  'start-operation': 'Start …',
  'join-operation': 'Join …',
  'pause-operation': 'Pause …',
  'leave-operation': 'Step out of …',
  'resume-operation': 'Go on with …',
  'take-over-operation': 'Take over …',
  'finish-operation': 'Finish …',
  'snug-joint': 'Run up … snug',
  'final-joint': 'Bring … to final',
  'verify-joint': 'Verify …',
  'recheck-joint': 'Recheck …',
  'reject-joint': 'Reject …',
  'open-joint': 'Open …',
  'report-disturbed': 'Report … as disturbed',
  'report-over-torque': 'Report … as over-torqued',
  'begin-check': 'Begin …',
  'pass-check': 'Pass …',
  'fail-check': 'Fail …',
  'report-finding': 'Report a finding',
  'decide-finding': 'Decide …',
  'close-finding': 'Close …',
  'ask-change': 'Ask for the end of the wait after …',
  'decide-change': 'Decide …',
  'place-stopgap': 'Place a stopgap',
  'remove-stopgap': 'Take out …',
  'set-condition': 'Say that … is so',
  'clear-condition': 'Say that … is no longer so',
  'receive-part': 'Receive …',
  'fit-part': 'Fit …',
  'take-part': 'Take off …',
  'strike-signature': 'Strike …',
  'pick-kit': 'Pick the kit for …',
  'empty-kit': 'Empty the kit for …',
  'report-kit-line': 'Report hardware of the kit for …',
  'record-donor': 'Record the donor',
  'grade-parts': 'Grade parts of the donor',
  'send-parts': 'Send parts out',
  'return-parts': 'Count parts in',
  'count-remnants': 'Count the rests of …',
  'keep-donor-hardware': 'Keep hardware off a donor',
  'share-donor-lot': 'Share lot … with all cars',
  'saw-bars': 'Sawn: bars of a cut plan',
  'recut-pieces': 'Cut pieces again',
  'open-trip': 'Plan a trip',
  'promise-trip': 'Say when a trip is back',
  'bill-trip': 'Enter the bill of a trip',
};

interface Asking {
  readonly words: Words;
  readonly nameOf: NameOf;
  /** What the car is called. */
  readonly car: string;
}

/** `Advance C54-012 to Steering`, `Start FR-030 Weld the front cross-member`. */
export const askedWords = (claim: Claim, { words, nameOf, car }: Asking): string => {
  switch (claim.type) {
    case 'advance-car':
    case 'send-back':
      return `${ASKED[claim.type]} ${car} to ${nameOf(claim.to) ?? claim.to}`;
    case 'deliver-car':
      return `${ASKED[claim.type]} ${car}`;
    default:
      return withThing(claim.type, thingOf(claim, words));
  }
};

/** The same for who knows only the kind of it, and perhaps its thing. */
export const withThing = (type: ClaimType, thing: string | null): string =>
  thing === null ? ASKED[type].replace(/ (?:of |on |lot )?…/u, '') : ASKED[type].replace('…', thing);

const thingOf = (claim: Claim, words: Words): string | null => {
  if ('operation' in claim) return words.thing(claim.operation);
  if ('joint' in claim) return words.thing(claim.joint);
  if ('check' in claim) return words.thing(claim.check);
  if ('condition' in claim) return `“${conditionWords(claim.condition)}”`;
  if ('part' in claim) return words.thing(claim.part);
  if ('option' in claim) return words.thing(claim.option);
  switch (claim.type) {
    case 'decide-finding':
    case 'close-finding':
      return claim.finding;
    case 'decide-change':
      return claim.change;
    case 'release-hold':
      return claim.hold;
    case 'remove-stopgap':
      return claim.stopgap;
    case 'ask-change':
      return words.thing(claim.wait);
    case 'assign':
      return words.job(claim.job);
    case 'add-note':
    case 'add-photo':
      return words.thing(claim.of);
    case 'strike-signature':
      return words.signature(claim.signature);
    case 'set-supplier':
    case 'add-person':
    case 'add-tool':
    case 'add-adapter':
      return claim.name;
    case 'end-offer':
      return claim.offer;
    default:
      if ('item' in claim && !('lot' in claim)) return words.thing(claim.item);
      return 'person' in claim
        ? words.person(claim.person)
        : 'tool' in claim
          ? words.thing(claim.tool)
          : 'item' in claim
            ? claim.item
            : 'lot' in claim
              ? claim.lot
              : null;
  }
};
