/** W15. People come to work and go from it: nobody undoes another's list, and nobody stops another's clock. */
import { beforeEach, describe, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { minutesOf, workSpans } from '@/lib/domain/hours';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const body = plan({
  conditions: { 'body-on': 'body on the frame', jacked: 'car on the jack' },
  stages: { BD: { name: 'Body' } },
  operations: {
    'BD-010': {
      name: 'Lower the body',
      stage: 'BD',
      crew: 2,
      needs: ['-body-on', '-jacked'],
      body: ['set body-on', 'final J-1'],
    },
    'BD-020': { name: 'Doors', stage: 'BD' },
  },
  joints: {
    'J-1': { name: 'Mount', fasteners: 1, method: 'click', torque: '30 ± 3 N·m', source: 'Invented' },
  },
});

let shop: Shop;
beforeEach(() => {
  shop = shopWith(body);
});

describe('given two leads who look at the same list', () => {
  const job = 'stage:BD';
  const crew = () => shop.car().assignments[job]?.people;

  test('then each changes what they changed, and neither undoes the other', () => {
    shop.does('leo', { type: 'assign', job, add: ['tom', 'vera'] });
    // Both saw Tom and Vera: one adds Tess, the other takes Tom off.
    shop.does('leo', { type: 'assign', job, add: ['tess'] });
    shop.does('ada', { type: 'assign', job, remove: ['tom'] });
    expect(crew()).toEqual(['vera', 'tess']);
  });

  test('then what is so already is told to nobody, and the same person stands there once', () => {
    shop.does('leo', { type: 'assign', job, add: ['tom'] });
    expect(shop.does('ada', { type: 'assign', job, add: ['tom'] })).toEqual([]);
    expect(shop.does('ada', { type: 'assign', job, remove: ['vera'] })).toEqual([]);
    expect(crew()).toEqual(['tom']);
  });

  test('then a list emptied is given to nobody, and a stranger is no crew', () => {
    shop.does('leo', { type: 'assign', job, add: ['tom'] });
    shop.does('leo', { type: 'assign', job, remove: ['tom'] });
    expect(crew()).toEqual([]);
    expect(shop.codes('leo', { type: 'assign', job, add: ['nobody'] })).toEqual(['unknown-thing']);
    expect(shop.codes('leo', { type: 'assign', job, remove: ['nobody'] })).toEqual(['unknown-thing']);
  });
});

describe('given two at one piece of work', () => {
  const events: Event[] = [];
  const does = (...told: Parameters<Shop['does']>): void => {
    events.push(...shop.does(...told));
  };
  const row = () => shop.car().operations['BD-010'];
  const minutes = () =>
    minutesOf(workSpans(events.flatMap((event) => (event.stream === 'car' ? [event] : []))), shop.now);
  beforeEach(() => {
    events.length = 0;
    does('tom', { type: 'start-operation', operation: 'BD-010' });
    does('tess', { type: 'join-operation', operation: 'BD-010' });
  });

  test('then one steps out, the other goes on, and the clock of the first is free', () => {
    shop.later('30 min');
    does('tess', { type: 'leave-operation', operation: 'BD-010', leftAs: 'packers 1 to 4 in' });
    expect(row()).toMatchObject({ status: 'running', present: ['tom'], crew: ['tom', 'tess'] });
    does('tess', { type: 'start-operation', operation: 'BD-020' });
    shop.later('20 min');
    does('tess', { type: 'finish-operation', operation: 'BD-020' });
    const told = minutes();
    // A minute passes with each act.
    expect(told['tom']).toBe(1 + 31 + 1 + 21);
    expect(told['tess']).toBe(31 + 21);
  });

  test('then who comes back is on it once more, with a stretch of their own', () => {
    does('tess', { type: 'leave-operation', operation: 'BD-010' });
    shop.later('1 h');
    does('tess', { type: 'join-operation', operation: 'BD-010' });
    shop.later('10 min');
    expect(row()?.present).toEqual(['tom', 'tess']);
    expect(minutes()['tess']).toBe(1 + 10);
  });

  test('then the last one leaving pauses it, with how it was left', () => {
    does('tess', { type: 'leave-operation', operation: 'BD-010' });
    does('tom', { type: 'leave-operation', operation: 'BD-010', leftAs: 'on the slings' });
    expect(row()).toMatchObject({ status: 'paused', present: [], leftAs: 'on the slings' });
    expect(shop.facts().clocks).toEqual({});
  });

  test('then who is not on it has nothing to leave, and is not refused', () => {
    expect(shop.does('vera', { type: 'leave-operation', operation: 'BD-010' })).toEqual([]);
    expect(row()?.present).toEqual(['tom', 'tess']);
    expect(shop.codes('vera', { type: 'leave-operation', operation: 'BD-999' })).toEqual(['unknown-thing']);
  });

  test('then stepping out is offered where somebody stays, and not to one alone', () => {
    const acts = () => shop.assess().jobs.find(({ key }) => key === 'BD-010')?.allows;
    expect(acts()).toContain('leave-operation');
    does('tess', { type: 'leave-operation', operation: 'BD-010' });
    expect(acts()).not.toContain('leave-operation');
    expect(acts()).toContain('pause-operation');
  });

  test('then whoever is on it with another takes it over alone, first or last to come', () => {
    const first = row()?.present[0] ?? '';
    shop.does(first, { type: 'take-over-operation', operation: 'BD-010' });
    expect(row()?.present).toEqual([first]);
  });

  test('then who is left alone on it has nobody to take it over from; another one has', () => {
    does('tess', { type: 'leave-operation', operation: 'BD-010' });
    expect(shop.codes('tom', { type: 'take-over-operation', operation: 'BD-010' })).toEqual([
      'already-on-it',
    ]);
    shop.does('vera', { type: 'take-over-operation', operation: 'BD-010' });
    expect(row()?.present).toEqual(['vera']);
  });
});

describe('given work that changes what it needed itself', () => {
  beforeEach(() => {
    shop.does('tom', { type: 'start-operation', operation: 'BD-010' });
    shop.does('tess', { type: 'join-operation', operation: 'BD-010' });
    shop.does('tom', { type: 'set-condition', condition: 'body-on', reason: 'down on its packers' });
    shop.does('tom', { type: 'pause-operation', operation: 'BD-010', leftAs: 'body down, bolts loose' });
  });

  test('then it goes on after the break, and nobody is told to lift the body off first', () => {
    expect(shop.assess().jobs.find(({ key }) => key === 'BD-010')?.waitsFor).toEqual([]);
    shop.does('tom', { type: 'resume-operation', operation: 'BD-010' });
    shop.does('vera', { type: 'take-over-operation', operation: 'BD-010' });
  });

  test('then it goes on after its finish was struck, too', () => {
    shop.does('tom', { type: 'resume-operation', operation: 'BD-010' });
    shop.does('tess', { type: 'join-operation', operation: 'BD-010' });
    shop.tighten('tom', 'J-1');
    shop.finish('tom', 'BD-010');
    shop.does('leo', {
      type: 'strike-signature',
      signature: signed('finish-operation'),
      reason: 'wrong car',
    });
    shop.does('tom', { type: 'resume-operation', operation: 'BD-010' });
  });

  test('then what somebody else reported meanwhile is asked', () => {
    shop.does('vera', { type: 'clear-condition', condition: 'body-on', reason: 'lifted off again' });
    shop.does('vera', { type: 'set-condition', condition: 'jacked', reason: 'on the jack' });
    expect(shop.codes('tom', { type: 'resume-operation', operation: 'BD-010' })).toEqual(['condition-true']);
  });
});

const signed = (act: string): string =>
  Object.entries(shop.car().signatures)
    .filter(([, row]) => row.act === act && row.struck === null)
    .map(([id]) => id)
    .at(-1) ?? '';

describe('given a finish that was signed by mistake', () => {
  beforeEach(() => {
    shop.begin('tom', 'BD-020');
    shop.finish('tom', 'BD-020');
    shop.does('tom', {
      type: 'strike-signature',
      signature: signed('finish-operation'),
      reason: 'wrong car',
    });
  });

  test('then the work is paused with nobody at it, and says why', () => {
    expect(shop.car().operations['BD-020']).toMatchObject({
      status: 'paused',
      present: [],
      crew: ['tom'],
      leftAs: 'finished, and the signature struck: wrong car',
    });
    expect(shop.facts().clocks).toEqual({});
    const job = shop.assess().jobs.find(({ key }) => key === 'BD-020');
    expect(job).toMatchObject({ state: 'paused', allows: ['resume-operation', 'take-over-operation'] });
  });

  test('then it is finished only by somebody who goes on with it', () => {
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'BD-020' })).toEqual([
      'operation-not-running',
    ]);
    shop.does('tom', { type: 'resume-operation', operation: 'BD-020' });
    shop.does('tom', { type: 'finish-operation', operation: 'BD-020' });
  });
});
