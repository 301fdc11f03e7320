/**
 * The demo shop's people, tools and adapters, as the commands that put them on the books. All invented: Quernmill
 * Coachworks, its people and its tools are nobody's.
 */
import type { Day, PersonId, Role } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import type { Qualification } from '@/lib/domain/shop/rows';

export const DEMO_NAME = 'Quernmill Coachworks';
export const DEMO_ZONE = 'Europe/London';

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
    qualifications: all('owner', 'lead', 'electrics', 'engine'),
  },
  {
    type: 'add-person',
    person: 'ines',
    name: 'Ines Harrow',
    roles: ['technician'],
    qualifications: all('owner', 'lead', 'weld', 'paint'),
  },
  {
    type: 'add-person',
    person: 'oswin',
    name: 'Oswin Slate',
    roles: ['technician'],
    qualifications: all('owner', 'lead', 'fuel', 'alignment'),
  },
];

export interface DemoSignIn {
  readonly person: PersonId;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly password: string;
  readonly pin: string;
}

/** For the demo only, and known to everybody who reads this: never give them to a shop of your own. */
const SECRETS: Readonly<Record<PersonId, Pick<DemoSignIn, 'password' | 'pin'>>> = {
  ada: { password: 'barley kettle ledger', pin: '204716' },
  mara: { password: 'lantern weir chalkline', pin: '318402' },
  tobit: { password: 'sedge anvil ratchet', pin: '570931' },
  ines: { password: 'clay ferry spanner', pin: '642875' },
  oswin: { password: 'gravel ridge feeler', pin: '793158' },
};

export const DEMO_SIGN_INS: readonly DemoSignIn[] = DEMO_PEOPLE.flatMap(({ person, name, roles }) => {
  const secrets = SECRETS[person];
  return secrets === undefined ? [] : [{ person, name, roles, ...secrets }];
});

type AddTool = Extract<ShopClaim, { type: 'add-tool' }>;
type Calibrated = NonNullable<AddTool['calibrated']>;

const tool = (
  [id, name, kind]: readonly [string, string, AddTool['kind']],
  [low, high, unit]: readonly [string, string, AddTool['unit']],
  calibrated: Calibrated,
  more: { readonly length?: string; readonly cycleLimit?: number } = {},
): AddTool => ({
  type: 'add-tool',
  tool: id,
  name,
  kind,
  low,
  high,
  unit,
  ...(more.length === undefined ? {} : { length: { value: more.length, unit: 'mm' } }),
  calibrated,
  ...(more.cycleLimit === undefined ? {} : { cycleLimit: more.cycleLimit }),
});

/** The tool whose calibration runs out before the others', the one that will be dropped, and the one that reads high. */
export const TOOL_RUN_OUT = 'T-03';
export const TOOL_READS_HIGH = 'T-14';
export const TOOL_DROPPED = 'T-12';

/**
 * Ranges cover every setting that the plan asks for, also without the three above. `runOut` is the last day of the one
 * whose calibration ran out.
 */
export const demoTools = ({
  on,
  due,
  runOut = due,
}: {
  readonly on: Day;
  readonly due: Day;
  readonly runOut?: Day;
}): readonly ShopClaim[] => {
  const good = { on, due };
  return [
    tool(['T-01', 'click wrench 1–10 N·m', 'click'], ['1', '10', 'N·m'], good, { length: '240' }),
    tool(['T-02', 'click wrench 5–25 N·m', 'click'], ['5', '25', 'N·m'], good, {
      length: '300',
      cycleLimit: 5000,
    }),
    tool(
      [TOOL_RUN_OUT, 'click wrench 20–100 N·m', 'click'],
      ['20', '100', 'N·m'],
      { on, due: runOut },
      {
        length: '400',
        cycleLimit: 5000,
      },
    ),
    tool(['T-04', 'click wrench 20–200 lbf·in', 'click'], ['20', '200', 'lbf·in'], good),
    tool(['T-05', 'dial wrench 20–100 N·m', 'dial'], ['20', '100', 'N·m'], good, { length: '420' }),
    tool(['T-06', 'dial wrench 40–200 N·m', 'dial'], ['40', '200', 'N·m'], good, { length: '560' }),
    tool(['T-07', 'click wrench 10–80 lbf·ft', 'click'], ['10', '80', 'lbf·ft'], good),
    tool(['T-08', 'dial wrench 8–75 lbf·ft', 'dial'], ['8', '75', 'lbf·ft'], good),
    tool(['T-09', 'dial wrench 50–300 lbf·ft', 'dial'], ['50', '300', 'lbf·ft'], good),
    tool(['T-10', 'drag gauge 0.5–6 N·m', 'gauge'], ['0.5', '6', 'N·m'], good),
    tool(['T-13', 'dial wrench 3–30 N·m', 'dial'], ['3', '30', 'N·m'], good, { length: '300' }),
    tool([TOOL_DROPPED, 'dial wrench 10–60 N·m', 'dial'], ['10', '60', 'N·m'], good, { length: '350' }),
    tool([TOOL_READS_HIGH, 'click wrench 20–110 N·m', 'click'], ['20', '110', 'N·m'], good, {
      length: '430',
      cycleLimit: 5000,
    }),
    { type: 'add-adapter', adapter: 'A-11', name: "crow's-foot 13 mm", extension: '45', unit: 'mm' },
    { type: 'add-adapter', adapter: 'A-13', name: "crow's-foot 17 mm", extension: '50', unit: 'mm' },
  ];
};
