/** A plan with a joint of every kind, for the tests of the sign-off sheet. All invented; nothing of it is for a car. */
import type { JointEntry, PlanDocument } from '@/lib/domain/plan/document';

const joint = (name: string, more: Partial<JointEntry>): JointEntry => ({
  name,
  fasteners: 1,
  method: 'dial',
  torque: '45 ± 3 N·m',
  source: 'invented',
  ...more,
});

const NUTS = { 'NUT-10': 4, 'WASHER-10': 8 };

export const BENCH: PlanDocument = {
  plan: 'Bench',
  revision: 'r7',
  conditions: { standing: 'the car stands on its springs' },
  stages: { ST: { name: 'Steering' }, WH: { name: 'On wheels' } },
  operations: {
    'ST-070': {
      name: 'Steering box and column',
      stage: 'ST',
      who: 'steering',
      body: ['901', '902', '903', '904', '905', '906', '908', '909', '910', '911', '912', '913'].map(
        (number) => `final J-${number}`,
      ),
    },
    'ST-080': { name: 'Offer up the box', stage: 'ST', who: 'steering', body: ['snug J-907', 'snug J-914'] },
    'WH-010': { name: 'Down on its wheels', stage: 'WH', body: ['set standing'] },
  },
  joints: {
    'J-901': joint('Steering box to bracket', {
      fasteners: 4,
      pattern: 'cross',
      passes: 2,
      adapter: true,
      critical: true,
      verify: 're-applied',
      hardware: NUTS,
      disturbs: ['J-908'],
    }),
    'J-902': joint('Column clamp', {
      fasteners: 4,
      pattern: 'cross',
      method: 'click',
      torque: '22 ± 2 N·m',
      critical: true,
      verify: 'seen',
      hardware: { 'NUT-10': 4 },
    }),
    'J-903': joint('Flange with lock nuts', {
      fasteners: 2,
      method: 'prevailing',
      torque: '36 ± 3 lbf·ft',
      critical: true,
      verify: 'seen',
      hardware: { 'NUT-10': 2 },
    }),
    'J-904': joint('Cap, torque and angle', {
      fasteners: 2,
      method: 'angle',
      torque: '30 ± 2 N·m',
      angle: '90 ± 5 °',
      useOnce: true,
      verify: 'witnessed',
    }),
    // Steps have windows of their own, so that the joint has none.
    'J-905': {
      name: 'Wheel bearing',
      fasteners: 1,
      method: 'sequence',
      source: 'invented',
      sequence: {
        'seat turning': '25 to 30 N·m',
        'back off': 'done',
        'light preload': '2 to 4 N·m',
        'pin in': 'done',
      },
      verify: 'witnessed',
    },
    'J-906': joint('Pedal clevis', {
      method: 'firm',
      torque: 'no value published',
      firmMeans: 'lock nut held, pin split',
    }),
    'J-907': joint('Bracket still without a value', { torque: 'no value yet' }),
    'J-908': joint('Idler to bracket', {
      fasteners: 2,
      critical: true,
      verify: 're-applied',
      hardware: { 'NUT-10': 2 },
    }),
    'J-909': joint('Cover', { fasteners: 16, pattern: 'from-centre', method: 'click', torque: '9 ± 1 N·m' }),
    'J-910': joint('Drop arm nut', {
      slot: true,
      torque: '60 to 80 N·m',
      critical: true,
      verify: 'witnessed',
    }),
    'J-911': joint('Rack mount', { fasteners: 6, pattern: 'circle', finalNeeds: ['+standing'] }),
    'J-912': joint('Beyond every tool', { torque: '900 ± 20 N·m' }),
    'J-913': joint('Box to bracket, once more', {
      fasteners: 4,
      pattern: 'cross',
      critical: true,
      verify: 'seen',
    }),
    'J-914': joint('Offered up', { fasteners: 3, pattern: 'circle', hardware: { 'NUT-10': 3 } }),
  },
  items: {
    'NUT-10': { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    'WASHER-10': { name: 'hardened washer M10', reuse: '5 times' },
  },
};

export const ALL_JOINTS = Object.keys(BENCH.joints ?? {});
