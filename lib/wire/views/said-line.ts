/**
 * A refusal as a screen shows it: sign, what is wrong, what clears it, and the place where that is done. It makes no
 * sentence, so that the browser can use it for the answers of the door without loading them all.
 */
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';

export interface RefusalLine {
  readonly code: RefusalCode;
  /** Name of a glyph. */
  readonly sign: LineSign;
  /** What is wrong. */
  readonly says: string;
  /** What clears it; empty where the sentence is one whole. */
  readonly clears: string;
  /** The place that clears it, and what the link says. */
  readonly href: string | null;
  readonly act: string | null;
  readonly under?: readonly RefusalLine[];
}

export type LineSign =
  | 'open'
  | 'snug'
  | 'final'
  | 'disturbed'
  | 'due'
  | 'failed'
  | 'stopgap'
  | 'finding'
  | 'deviation'
  | 'hold'
  | 'owed'
  | 'clock'
  | 'photo'
  | 'gap'
  | 'caldue'
  | 'critical'
  | 'lock'
  | 'gclosed';

/** For who got the sentence with the refusal. What stands under it is not said here. */
export const saidLine = (car: string, refusal: Refusal, said: string): RefusalLine => {
  const [says, clears] = halves(said);
  const place = placeOf(refusal);
  // One's other work may be on another car.
  const on = refusal.code === 'clock-running' ? refusal.details.car : car;
  return {
    code: refusal.code,
    sign: signOf(refusal),
    says,
    clears,
    href: place === null ? null : 'href' in place ? place.href : hrefOf(on, place),
    act: place === null ? null : place.act,
  };
};

/** Every sentence ends with what clears it; names and reasons before it may hold full stops of their own. */
const halves = (said: string): readonly [string, string] => {
  const end = /^(.*[.!?]”?) ([^.]*[A-Z“].*)$/s.exec(said);
  return end === null ? [said, ''] : [end[1] ?? said, end[2] ?? ''];
};

// ---- the place ----

type PlaceKind =
  | 'joint'
  | 'check'
  | 'operation'
  | 'stopgap'
  | 'finding'
  | 'hold'
  | 'change'
  | 'condition'
  | 'part'
  | 'option';

interface Place {
  readonly kind: PlaceKind | 'gate';
  readonly key: string;
  readonly act: string;
}

/** In the shop's books, and on no car. */
interface Elsewhere {
  readonly href: string;
  readonly act: string;
}

const PEOPLE: Elsewhere = { href: '/set-up/people', act: 'See people' };
const TOOLS: Elsewhere = { href: '/tools', act: 'See the tools' };

/** A joint has a sheet of its own, the gate a heading; everything else is an anchor on the car's page. */
const hrefOf = (car: string, { kind, key }: Place): string => {
  const page = `/cars/${encodeURIComponent(car)}`;
  if (kind === 'joint') return `${page}/joints/${encodeURIComponent(key)}`;
  return `${page}#${kind === 'gate' ? GATE_ANCHOR : anchorOf(kind, key)}`;
};

/** Where a car is moved on its page. */
export const GATE_ANCHOR = 'move';

/** The id on the car's page of the thing that a link goes to. */
export const anchorOf = (kind: PlaceKind, key: string): string => `${kind}:${key}`;

/** Where the loose ends of a kind stand that later gates ask for. */
export const laterId = (kind: string): string => `later:${kind}`;

const at = (kind: PlaceKind, key: string, act: string): Place => ({ kind, key, act });

/** Where it is cleared, and in two or three words what is done there; null where no page of the car clears it. */
const placeOf = (refusal: Refusal): Place | Elsewhere | null => {
  switch (refusal.code) {
    case 'operation-unfinished': {
      const { operation, status } = refusal.details;
      return at('operation', operation, status === 'not started' ? 'Start it' : 'Go on with it');
    }
    case 'joint-below-level': {
      const { joint, level, wanted } = refusal.details;
      const verifies = wanted === 'verified' && level === 'final';
      return at('joint', joint, verifies ? 'Verify it' : level === 'open' ? 'Fit it' : 'Sign final');
    }
    case 'joint-in-doubt':
    case 'doubt-needs-more':
      return at(
        'joint',
        refusal.details.joint,
        refusal.details.remedy === 'recheck'
          ? 'Try again'
          : refusal.details.remedy === 'renew'
            ? 'Renew'
            : 'Torque again',
      );
    case 'joint-work-missing':
      return at('joint', refusal.details.joint, 'Go to the joint');
    case 'check-not-clear': {
      const { check, status } = refusal.details;
      return at('check', check, CHECK_ACTS[status] ?? 'Do the check');
    }
    case 'stopgap-in-place':
      return at('stopgap', refusal.details.stopgap, 'Take it out');
    case 'slave-part-in-joint':
      return at('stopgap', refusal.details.stopgap, 'Take it out');
    case 'condition-not-true':
      return at('condition', refusal.details.condition, 'See what sets it');
    case 'condition-true':
      return at('condition', refusal.details.condition, 'See what ends it');
    case 'wait-running':
      return at('operation', refusal.details.operation, 'See the wait');
    case 'clock-running':
      return at('operation', refusal.details.operation, 'Go to it');
    case 'part-absent':
    case 'part-away':
    case 'part-not-away':
    case 'part-not-looked-over':
    case 'look-not-said':
    case 'part-not-fitted':
    case 'part-owed':
      return at('part', refusal.details.part, 'See the part');
    case 'option-undecided':
      return at('option', refusal.details.option, 'Choose');
    case 'finding-undecided':
      return at('finding', refusal.details.finding, 'Decide it');
    case 'finding-not-closed':
    case 'finding-on-part':
      return at('finding', refusal.details.finding, 'See the finding');
    case 'change-undecided':
      return at('change', refusal.details.change, 'Decide it');
    case 'hold-stands':
      return at('hold', refusal.details.hold, 'See the hold');
    case 'photo-missing':
      return at('operation', refusal.details.of, 'Take it');
    case 'operation-not-running':
    case 'operation-already-running':
    case 'not-on-it':
    case 'crew-too-small':
      return at('operation', refusal.details.operation, 'Go to it');
    case 'no-work-names-joint':
    case 'condition-set-by-work':
    case 'part-not-taken-into-work': {
      const [operation] = refusal.details.operations;
      return operation === undefined ? null : at('operation', operation, 'Start it');
    }
    case 'check-already-clear':
    case 'check-not-begun':
    case 'check-too-short':
    case 'stale-round':
      return at('check', refusal.details.check, 'See the check');
    case 'joint-not-final':
      return at('joint', refusal.details.joint, 'Go to the joint');
    case 'stage-not-reached':
      return { kind: 'gate', key: '', act: 'See the gate' };
    case 'not-qualified':
    case 'unknown-person':
    case 'last-owner':
      return PEOPLE;
    case 'tool-out-of-calibration':
    case 'tool-suspect':
    case 'tool-cycles-used-up':
    case 'adapter-length-unknown':
      return TOOLS;
    default:
      return null;
  }
};

// ---- the sign ----

const SIGNS: Partial<Record<RefusalCode, LineSign>> = {
  'operation-unfinished': 'gap',
  'joint-in-doubt': 'disturbed',
  'doubt-needs-more': 'disturbed',
  'joint-work-missing': 'open',
  'stopgap-in-place': 'stopgap',
  'slave-part-in-joint': 'stopgap',
  'wait-running': 'clock',
  'check-too-short': 'clock',
  'clock-running': 'clock',
  'part-absent': 'owed',
  'part-away': 'owed',
  'part-not-looked-over': 'owed',
  'part-not-fitted': 'owed',
  'part-owed': 'owed',
  'photo-missing': 'photo',
  'option-undecided': 'deviation',
  'change-undecided': 'deviation',
  'finding-undecided': 'finding',
  'finding-not-closed': 'finding',
  'finding-on-part': 'finding',
  'hold-stands': 'hold',
  'tool-out-of-calibration': 'caldue',
  'tool-suspect': 'caldue',
  'tool-cycles-used-up': 'caldue',
  'not-independent': 'critical',
  'not-allowed': 'lock',
  'not-qualified': 'lock',
};

/** What is done at a check that is not simply done. */
const CHECK_ACTS: Readonly<Record<string, string>> = {
  failed: 'See the finding',
  'failed, decided': 'Check it again',
  'failed, change asked': 'See why',
};

const signOf = (refusal: Refusal): LineSign => {
  if (refusal.code === 'joint-below-level') {
    const { level } = refusal.details;
    return level === 'verified' ? 'final' : level;
  }
  if (refusal.code === 'check-not-clear')
    return refusal.details.status.startsWith('failed') ? 'failed' : 'due';
  return SIGNS[refusal.code] ?? 'gclosed';
};
