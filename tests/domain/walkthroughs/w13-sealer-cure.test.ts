import { beforeEach, describe, expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const body = plan({
  stages: { BD: { name: 'Body' }, PR: { name: 'Proving' } },
  operations: {
    'BD-020': { name: 'Seal the floor', stage: 'BD', wait: '16 h', waitFor: 'cure' },
    'BD-030': { name: 'Fit the floor', stage: 'BD', needs: ['BD-020', 'wait BD-020'], body: ['final J-601'] },
  },
  joints: {
    'J-601': { name: 'Floor', fasteners: 6, method: 'click', torque: '20 ± 2 N·m', source: 'Invented' },
  },
});

const fitting: Told = { type: 'start-operation', operation: 'BD-030' };

describe('W13: given a sealed floor that cures for 16 hours', () => {
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(body, { begins: '2026-03-02T15:00:00.000Z' });
    shop.perform('tom', 'BD-020');
  });
  const sealedAt = () => Date.parse(shop.car().operations['BD-020']?.finishedAt ?? '');
  const after = (hours: number) => new Date(sealedAt() + hours * 3_600_000).toISOString();

  test('when it is to be fitted at minute 10, then it is refused with the time the cure ends', () => {
    shop.later('9 min');
    const refusals = shop.refused('tess', fitting);
    expect(refusals).toEqual([{ code: 'wait-running', details: { operation: 'BD-020', until: after(16) } }]);
    expect(shop.sentences(refusals)).toEqual([
      `The wait after Seal the floor (BD-020) runs until ${after(16)}. Wait, or ask for a change that ends it.`,
    ]);
    expect(shop.jobs('waiting')).toContain('operation:BD-030:1');
  });

  test('when it is to be fitted before it was sealed at all, then it is told to seal first', () => {
    const early = shopWith(body);
    const refusals = early.refused('tess', fitting);
    expect(refusals.map((each) => each.code)).toEqual(['operation-unfinished', 'wait-running']);
    expect(early.sentences(refusals)[1]).toBe(
      'The wait after Seal the floor (BD-020) has not begun. Finish that operation first.',
    );
  });

  test('when it is to be fitted next morning, then it is accepted; a minute too early it is not', () => {
    shop.later('15 h').later('58 min');
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
    expect(shop.now).toBe(new Date(sealedAt() + 15 * 3_600_000 + 59 * 60_000).toISOString());
    shop.does('tess', fitting);
    expect(shop.now).toBe(after(16));
    expect(shop.car().operations['BD-030']?.status).toBe('running');
  });

  test('when a tablet says it is tomorrow already, then it is judged by now and refused', () => {
    expect(shop.codes('tess', fitting, { doneAt: after(17) })).toEqual(['wait-running']);
  });

  test('when it was fitted at minute 10 and the tablet tells so next morning, then it is refused all the same', () => {
    const [lastContact, doneAt] = [after(0), after(10 / 60)];
    shop.later('20 h');
    expect(shop.codes('tess', fitting, { doneAt, lastContact })).toEqual(['wait-running']);
  });

  test('when it was fitted after the cure by a tablet out of touch, then that is accepted late', () => {
    const [lastContact, doneAt] = [after(0), after(16)];
    shop.later('40 h');
    shop.does('tess', fitting, { doneAt, lastContact });
    expect(shop.car().operations['BD-030']?.startedAt).toBe(doneAt);
  });

  test('when the finish is struck and signed again, then the cure counts from the new finish', () => {
    const finish = Object.entries(shop.car().signatures).find(
      ([, row]) => row.act === 'finish-operation',
    )?.[0];
    shop.later('10 h').does('tom', { type: 'strike-signature', signature: finish ?? '', reason: 'not done' });
    expect(shop.codes('tess', fitting)).toEqual(['operation-unfinished', 'wait-running']);
    shop.does('tom', { type: 'resume-operation', operation: 'BD-020' });
    shop.finish('tom', 'BD-020');
    shop.later('10 h');
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
    shop.later('6 h');
    shop.does('tess', fitting);
    expect(shop.car().operations['BD-030']?.status).toBe('running');
  });
});

describe('W13: given a sealing that is told late, when the cure is counted', () => {
  test('when the tablet claims a time that has not come, then the finish is taken at now, and that is on record', () => {
    const shop = shopWith(body);
    shop.begin('tom', 'BD-020');
    const doneAt = '2026-03-02T20:00:00.000Z';
    const [event] = shop.does('tom', { type: 'finish-operation', operation: 'BD-020' }, { doneAt });
    expect(shop.car().operations['BD-020']?.finishedAt).toBe(shop.now);
    expect(event?.meta).toMatchObject({ at: shop.now, doneAt, receivedAt: shop.now, clockDoubted: true });
  });

  test("then it counts by the server's clock too: a claimed early finish wins no time", () => {
    const shop = shopWith(body);
    shop.begin('tom', 'BD-020');
    const contact = shop.now;
    shop.later('10 h');
    const claimed = new Date(Date.parse(contact) + 60_000).toISOString();
    shop.does(
      'tom',
      { type: 'finish-operation', operation: 'BD-020' },
      { doneAt: claimed, lastContact: contact },
    );
    const heard = shop.car().operations['BD-020']?.finishedReceivedAt ?? '';
    expect(shop.car().operations['BD-020']?.finishedAt).toBe(claimed);
    shop.later('7 h');
    const until = new Date(Date.parse(heard) + 16 * 3_600_000).toISOString();
    expect(shop.refused('tess', fitting)).toEqual([
      { code: 'wait-running', details: { operation: 'BD-020', until } },
    ]);
    shop.later('9 h');
    shop.does('tess', fitting);
    expect(shop.car().operations['BD-030']?.status).toBe('running');
  });
});

describe('W13: given a cure that is to end early', () => {
  const asked = (): Shop => {
    const shop = shopWith(body);
    shop.perform('tom', 'BD-020');
    shop
      .later('6 h')
      .does('tess', { type: 'ask-change', wait: 'BD-020', reason: 'warm room, dry to the touch' });
    return shop;
  };
  const decide = (approve: boolean): Told => ({
    type: 'decide-change',
    change: 'D-1',
    approve,
    reason: 'checked',
  });

  test('when that is only asked for, then it runs on, and the gate waits for the answer', () => {
    const shop = asked();
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
    expect(shop.gate()).toContain('change-undecided');
  });

  test('when a lead approves it, then the floor may be fitted', () => {
    const shop = asked();
    shop.does('leo', decide(true));
    shop.does('tess', fitting);
    expect(shop.car().operations['BD-020']).toMatchObject({ status: 'finished', waitEnded: true });
    expect(shop.car().changes['D-1']).toMatchObject({
      state: 'approved',
      requestedBy: 'tess',
      performers: ['tom'],
    });
  });

  test('when it is declined, then it runs on, and the gate waits for nothing more than the work', () => {
    const shop = asked();
    shop.does('leo', decide(false));
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
    expect(shop.gate()).toEqual(['operation-unfinished', 'joint-below-level']);
    expect(shop.codes('leo', decide(true))).toEqual(['change-already']);
  });

  test('then a technician does not decide it, nor who asked, nor who did the sealing', () => {
    const shop = asked();
    expect(shop.codes('vera', decide(true))).toEqual(['not-allowed']);
    const own = shopWith(body);
    own.perform('leo', 'BD-020');
    own.does('ada', { type: 'ask-change', wait: 'BD-020', reason: 'in a hurry' });
    for (const person of ['leo', 'ada'])
      expect(own.codes(person, decide(true))).toEqual(['approver-not-independent']);
    expect(own.car().operations['BD-020']?.waitEnded).toBe(false);
  });

  test('when the sealing is run again after a struck finish, then the old approval does not end the new cure', () => {
    const shop = shopWith(body);
    shop.perform('tom', 'BD-020');
    const signature = shop.last;
    shop.does('tess', { type: 'ask-change', wait: 'BD-020', reason: 'dry' });
    shop.does('leo', decide(true));
    shop.does('tom', { type: 'strike-signature', signature, reason: 'a seam was missed' });
    shop.does('tom', { type: 'resume-operation', operation: 'BD-020' });
    shop.finish('tom', 'BD-020');
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
  });

  test('when it was approved before the sealing was finished, then the cure that follows is still waited for', () => {
    const shop = shopWith(body);
    shop.begin('tom', 'BD-020');
    shop.does('tess', { type: 'ask-change', wait: 'BD-020', reason: 'quick sealer' });
    shop.does('leo', decide(true));
    shop.finish('tom', 'BD-020');
    expect(shop.codes('tess', fitting)).toEqual(['wait-running']);
  });
});
