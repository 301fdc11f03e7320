/**
 * The demo shop's people, tools and adapters, as the commands that put them on the books. All invented: Quernmill
 * Coachworks, its people and its tools are nobody's.
 */
import type { ShopClaim } from '@/lib/domain/commands';
import type { Qualification } from '@/lib/domain/shop/rows';

const TRADES = [
  'body',
  'brakes',
  'electrics',
  'engine',
  'fuel',
  'lifting',
  'paint',
  'steering',
  'suspension',
  'axle',
  'alignment',
  'weld',
  'road-test',
  'lead',
  'owner',
];

const all = (...without: string[]): readonly Qualification[] =>
  TRADES.filter((key) => !without.includes(key)).map((key) => ({ key }));

export const DEMO_OWNER = 'ada';
export const DEMO_LEAD = 'mara';

/** In the order in which they are entered; the first is entered by herself, into an empty book. */
export const DEMO_PEOPLE: readonly Extract<ShopClaim, { type: 'add-person' }>[] = [
  { type: 'add-person', person: DEMO_OWNER, name: 'Ada Quern', roles: ['owner'], qualifications: all() },
  {
    type: 'add-person',
    person: DEMO_LEAD,
    name: 'Mara Mill',
    roles: ['lead', 'technician'],
    qualifications: all('owner'),
  },
  {
    type: 'add-person',
    person: 'tobit',
    name: 'Tobit Fenn',
    roles: ['technician'],
    qualifications: all('owner', 'lead'),
  },
  {
    type: 'add-person',
    person: 'ines',
    name: 'Ines Harrow',
    roles: ['technician'],
    qualifications: all('owner', 'lead'),
  },
  {
    type: 'add-person',
    person: 'oswin',
    name: 'Oswin Slate',
    roles: ['technician'],
    qualifications: all('owner', 'lead'),
  },
];

const CALIBRATED = { on: '2025-12-01', due: '2026-11-30' };

type AddTool = Extract<ShopClaim, { type: 'add-tool' }>;

const tool = (
  id: string,
  name: string,
  kind: AddTool['kind'],
  [low, high]: readonly [string, string],
  unit: AddTool['unit'],
  length?: string,
): AddTool => ({
  type: 'add-tool',
  tool: id,
  name,
  kind,
  low,
  high,
  unit,
  ...(length === undefined ? {} : { length: { value: length, unit: 'mm' } }),
  calibrated: CALIBRATED,
});

/** Ranges cover every setting that the plan asks for. */
export const DEMO_TOOLS: readonly ShopClaim[] = [
  tool('T-01', 'click wrench 1–10 N·m', 'click', ['1', '10'], 'N·m'),
  tool('T-02', 'click wrench 5–25 N·m', 'click', ['5', '25'], 'N·m'),
  tool('T-03', 'click wrench 20–100 N·m', 'click', ['20', '100'], 'N·m', '400'),
  tool('T-04', 'click wrench 20–200 lbf·in', 'click', ['20', '200'], 'lbf·in'),
  tool('T-05', 'dial wrench 20–100 N·m', 'dial', ['20', '100'], 'N·m', '420'),
  tool('T-06', 'dial wrench 40–200 N·m', 'dial', ['40', '200'], 'N·m', '560'),
  tool('T-07', 'click wrench 10–80 lbf·ft', 'click', ['10', '80'], 'lbf·ft'),
  tool('T-08', 'dial wrench 8–75 lbf·ft', 'dial', ['8', '75'], 'lbf·ft'),
  tool('T-09', 'dial wrench 50–300 lbf·ft', 'dial', ['50', '300'], 'lbf·ft'),
  tool('T-13', 'dial wrench 3–30 N·m', 'dial', ['3', '30'], 'N·m', '300'),
  { type: 'add-adapter', adapter: 'A-11', name: "crow's-foot 13 mm", extension: '45', unit: 'mm' },
];
