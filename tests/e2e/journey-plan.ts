/** A short plan for a technician's day: cautions, a joint that is read, a check, and a job left half done. All invented. */
import type { PlanDocument } from '@/lib/domain/plan/document';

export const DAY: PlanDocument = {
  plan: 'Day',
  revision: 'r3',
  stages: { BX: { name: 'Box' }, OUT: { name: 'Out' } },
  operations: {
    'BX-010': {
      name: 'Box on its bracket',
      stage: 'BX',
      minutes: 90,
      cautions: ['stands', 'roll'],
      steps: ['Push each stand pin: all four seated.', 'Paint the slip mark across nut and bracket.'],
      body: ['final J-961', 'check K-961'],
    },
    'BX-020': { name: 'Sweep the bay', stage: 'BX', minutes: 15 },
  },
  joints: {
    'J-961': {
      name: 'Box to bracket',
      fasteners: 2,
      method: 'dial',
      torque: '45 ± 3 N·m',
      source: 'invented',
      critical: true,
      verify: 're-applied',
      hardware: { 'NUT-96': 2 },
    },
  },
  checks: { 'K-961': { name: 'Box sits flat', kind: 'visual' } },
  items: { 'NUT-96': { name: 'Lock nut M10', reuse: 'once final' } },
  cautions: {
    stands: { hazard: 'the car is on stands', text: 'Nobody goes under until all four pins are home.' },
    roll: { hazard: 'do not roll it', text: 'What is snug lets go without warning.' },
  },
};
