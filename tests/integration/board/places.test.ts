/** Every reason has a place where it is cleared. */
import { describe, expect, test } from 'vitest';
import { BODY, GATE, LOOK, NEEDS, START } from '@/lib/domain/base/refusal-groups';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import { GATE_ANCHOR, saidLine } from '@/lib/wire/views/said-line';

/** Where a reason is cleared. `here`: in the form that met it, by other words, another tool or another person. */
type Where = 'car' | 'sheet' | 'gate' | 'people' | 'tools' | 'here';

/** Typed, so that a new reason does not compile before somebody says where it is cleared. */
const WHERE: Readonly<Record<RefusalCode, Where>> = {
  'operation-unfinished': 'car',
  'joint-below-level': 'sheet',
  'joint-in-doubt': 'sheet',
  'joint-work-missing': 'sheet',
  'check-not-clear': 'car',
  'stopgap-in-place': 'car',
  'condition-not-true': 'car',
  'condition-true': 'car',
  'wait-running': 'car',
  'part-absent': 'car',
  'part-not-fitted': 'car',
  'photo-missing': 'car',
  'option-undecided': 'car',
  'finding-undecided': 'car',
  'finding-not-closed': 'car',
  'change-undecided': 'car',
  'part-owed': 'car',
  'deposit-not-owed': 'here',
  'part-away': 'car',
  'part-not-looked-over': 'car',
  'part-not-away': 'car',
  'look-not-said': 'car',
  'part-not-given': 'here',
  'item-not-this-part': 'here',
  'back-before-gone': 'here',
  'rest-not-there': 'here',
  'bar-too-short': 'here',
  'cut-not-wanted': 'here',
  'not-sawn': 'here',
  'unknown-thing': 'here',
  'not-allowed': 'here',
  'unknown-person': 'people',
  'last-owner': 'people',
  'not-qualified': 'people',
  'not-independent': 'here',
  'approver-not-independent': 'here',
  'strike-needs-lead': 'here',
  'stage-not-reached': 'gate',
  'hold-stands': 'car',
  'operation-not-running': 'car',
  'operation-already-running': 'car',
  'operation-already-finished': 'here',
  'already-on-it': 'here',
  'not-on-it': 'car',
  'clock-running': 'car',
  'crew-too-small': 'car',
  'no-work-names-joint': 'car',
  'stale-cycle': 'here',
  'stale-run': 'here',
  'stale-round': 'car',
  'level-already': 'here',
  'joint-not-final': 'sheet',
  'nothing-to-recheck': 'here',
  'doubt-needs-more': 'sheet',
  'slave-part-in-joint': 'car',
  'check-already-clear': 'car',
  'check-not-begun': 'car',
  'check-too-short': 'car',
  'value-missing': 'here',
  'value-unreadable': 'here',
  'removed-more-than-placed': 'here',
  'condition-set-by-work': 'car',
  'condition-already': 'here',
  'part-not-taken-into-work': 'car',
  'part-already': 'here',
  'finding-on-part': 'car',
  'finding-already': 'here',
  'never-concede': 'here',
  'change-already': 'here',
  'hold-already-released': 'here',
  'option-already-chosen': 'here',
  'choice-unknown': 'here',
  'already-there': 'here',
  'size-unreadable': 'here',
  'plan-says': 'here',
  'comes-with-itself': 'here',
  'no-order-day': 'here',
  'steps-out-of-order': 'here',
  'weight-missing': 'here',
  'offer-ended': 'here',
  'given-before': 'here',
  'pin-empty': 'here',
  'not-offered': 'here',
  'price-changed': 'here',
  'freight-changed': 'here',
  'ordered-since': 'here',
  'order-day-past': 'here',
  'too-few-packs': 'here',
  'order-too-small': 'here',
  'nothing-came': 'here',
  'nothing-outstanding': 'here',
  'no-value-yet': 'here',
  'method-does-not-fit': 'here',
  'tool-missing': 'here',
  'tool-does-not-fit': 'here',
  'tool-out-of-calibration': 'tools',
  'tool-cycles-used-up': 'tools',
  'tool-suspect': 'tools',
  'setting-outside-tool-range': 'here',
  'adapter-length-unknown': 'tools',
  'reading-below': 'here',
  'reading-above': 'here',
  'unit-doubtful': 'here',
  'unit-does-not-fit': 'here',
  'passes-missing': 'here',
  'pattern-not-followed': 'here',
  'readings-missing': 'here',
  'step-missing': 'here',
  'step-outside': 'here',
  'verify-method-differs': 'here',
  'hardware-wrong': 'here',
  'substitute-needs-lead': 'here',
  'hardware-spent': 'here',
  'lot-quarantined': 'here',
  'lot-expired': 'here',
  'lot-of-other-item': 'here',
  'lot-of-other-car': 'here',
  'must-be-new': 'here',
  'lot-not-quarantined': 'here',
  // The board itself, where it is met: the lead overrides it in the same dialog.
  'room-full': 'here',
  'last-gate': 'here',
  'not-last-gate': 'here',
  'one-stage-at-a-time': 'here',
  'car-delivered': 'here',
};
const CODES = Object.keys(WHERE) as RefusalCode[];

/** Details of any shape: a line is made of names alone. */
const anyOf = (code: RefusalCode): Refusal =>
  ({
    code,
    details: new Proxy(
      {},
      { get: (_, name) => (name === 'operations' ? ['X-1'] : name === 'car' ? 'A-1' : 'X-1') },
    ),
  }) as unknown as Refusal;

const whereOf = (href: string | null): Where => {
  if (href === null) return 'here';
  if (href === '/set-up/people') return 'people';
  if (href === '/tools') return 'tools';
  if (href === `/cars/A-1#${GATE_ANCHOR}`) return 'gate';
  return href.startsWith('/cars/A-1/joints/') ? 'sheet' : 'car';
};

describe('given a reason', () => {
  test.each(CODES)('%s leads where it is cleared', (code) => {
    const line = saidLine('A-1', anyOf(code), 'Said.');
    expect([code, whereOf(line.href)]).toEqual([code, WHERE[code]]);
    expect(line.act === null).toBe(line.href === null);
  });

  test('what keeps work, gates and looks waiting is never left without a place', () => {
    const waiting = new Set([...NEEDS, ...START, ...BODY, ...GATE, ...LOOK]);
    expect([...waiting].filter((code) => WHERE[code] === 'here')).toEqual([]);
  });
});
