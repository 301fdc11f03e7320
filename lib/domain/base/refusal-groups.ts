/** Reasons that come together: what keeps work from starting, a gate closed, a final from counting. */
import type { RefusalCode } from './refusals';

/** Requirements, of any kind. */
export const NEEDS: readonly RefusalCode[] = [
  'operation-unfinished',
  'joint-below-level',
  'joint-in-doubt',
  'check-not-clear',
  'stopgap-in-place',
  'condition-not-true',
  'condition-true',
  'wait-running',
  'part-absent',
  'part-away',
  'part-not-looked-over',
  'photo-missing',
  'option-undecided',
];
export const START: readonly RefusalCode[] = [
  'not-qualified',
  'stage-not-reached',
  'hold-stands',
  'finding-on-part',
  ...NEEDS,
];
export const BODY: readonly RefusalCode[] = ['joint-work-missing', 'part-not-fitted', ...NEEDS];
export const GATE: readonly RefusalCode[] = [
  'hold-stands',
  'finding-undecided',
  'finding-not-closed',
  'change-undecided',
  ...NEEDS,
];
/** A tool or gauge that may be trusted. */
export const TRUST: readonly RefusalCode[] = ['tool-out-of-calibration', 'tool-suspect'];
const HARDWARE: readonly RefusalCode[] = [
  'hardware-wrong',
  'substitute-needs-lead',
  'hardware-spent',
  'lot-quarantined',
  'lot-expired',
  'lot-of-other-item',
  'lot-of-other-car',
  'must-be-new',
];
export const TIGHTEN: readonly RefusalCode[] = [
  'stale-cycle',
  'option-undecided',
  'hold-stands',
  'not-qualified',
  'no-work-names-joint',
  ...HARDWARE,
];
export const EVIDENCE: readonly RefusalCode[] = [
  'no-value-yet',
  'method-does-not-fit',
  'tool-missing',
  'tool-does-not-fit',
  'tool-cycles-used-up',
  'setting-outside-tool-range',
  'adapter-length-unknown',
  'reading-below',
  'reading-above',
  'unit-doubtful',
  'unit-does-not-fit',
  'passes-missing',
  'pattern-not-followed',
  'readings-missing',
  'value-unreadable',
  'step-missing',
  'step-outside',
  ...TRUST,
];
export const EYES: readonly RefusalCode[] = [
  'stale-cycle',
  'hold-stands',
  'not-qualified',
  'tool-missing',
  'setting-outside-tool-range',
  ...TRUST,
];
export const LOOK: readonly RefusalCode[] = [
  'option-undecided',
  'not-qualified',
  'check-already-clear',
  'stale-round',
  'finding-undecided',
  'change-undecided',
  'operation-not-running',
  'hold-stands',
  'part-absent',
];
export const ITEM_TERMS: readonly RefusalCode[] = [
  'value-unreadable',
  'size-unreadable',
  'plan-says',
  'comes-with-itself',
  'already-there',
];
export const SUPPLIER: readonly RefusalCode[] = ['no-order-day', 'steps-out-of-order', 'weight-missing'];
export const OFFER: readonly RefusalCode[] = ['value-unreadable', 'steps-out-of-order', 'weight-missing'];
export const PIN: readonly RefusalCode[] = ['value-unreadable', 'pin-empty', 'not-offered'];
