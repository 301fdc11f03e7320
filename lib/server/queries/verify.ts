/** Reads what waits for a second person. */
import 'server-only';
import { assess } from '@/lib/domain/assess';
import { levelOf } from '@/lib/domain/car/joint';
import { holdsNaming } from '@/lib/domain/decide/case';
import { planOf } from '@/lib/domain/facts';
import type { Person } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { waitingWords } from '@/lib/wire/views/duration';
import type { VerifyCar, VerifyLine, VerifyView } from '@/lib/wire/views/verify';
import { counted, named } from './board/words';
import { sheetOf } from './car/joint-rows';
import { dueMark, lineOf } from './car/lines';
import { photosAbout } from './car/photos';
import type { Given, Seen } from './car/seen';
import { see } from './car/seen';
import { reappliedAt } from './my-work/job-things';
import { eyesOn, whyNotOf } from './verify/eyes';
import type { Eyes } from './verify/eyes';

export const verifyView = async (db: Database, who: Person, now: string): Promise<VerifyView> => {
  const { shop, cars, setting, facts, floor } = await floorFor(db, who, now);
  const seen = new Map(
    floor.map(({ car, plan }) => {
      const given: Given = { shop, car, plan, facts, setting, floor: cars };
      return [car.id, see(given)] as const;
    }),
  );
  const all = eyesOn(floor, facts, who.id);
  const mine = all.filter((eyes) => eyes.mine.may);
  return {
    says: saysOf(mine, all.length - mine.length),
    mine: byCar(mine, seen, who),
    others: byCar(
      all.filter((eyes) => !eyes.mine.may),
      seen,
      who,
    ),
  };
};

/** How many joints wait for this person's eyes: the same ones that their queue lists. */
export const eyesWaiting = async (db: Database, who: Person, now: string): Promise<number> => {
  const { facts, floor } = await floorFor(db, who, now);
  return eyesOn(floor, facts, who.id).filter(({ mine }) => mine.may).length;
};

const floorFor = async (db: Database, who: Person, now: string) => {
  const [shop, cars, setting] = await Promise.all([loadShop(db), loadFloor(db), shopSetting(db)]);
  const plans = await loadPlans(
    db,
    cars.map((car) => car.plan),
  );
  const facts = viewFacts(shop, cars, plans, who.id, now, setting.zone);
  const floor = cars.flatMap((car) => {
    const plan = planOf(facts, car);
    return plan === null ? [] : [{ car, plan, assessment: assess(plan, car, facts) }];
  });
  return { shop, cars, setting, facts, floor };
};

const holdsGate = ({ at }: Eyes): boolean => at.joint.due <= at.car.stage;

const saysOf = (mine: readonly Eyes[], others: number): string => {
  if (mine.length === 0)
    return others === 0
      ? 'Everything that asks for a second person has had one.'
      : 'Nothing waits for your eyes now.';
  const gates = mine.filter(holdsGate).length;
  const what = counted(mine.length, 'joint');
  const hold =
    gates === 0
      ? ''
      : mine.length === 1
        ? ', and it holds a gate'
        : `, ${gates === mine.length ? 'and all of them hold a gate' : `${String(gates)} of them ${gates === 1 ? 'holds' : 'hold'} a gate`}`;
  return `${what} ${mine.length === 1 ? 'waits' : 'wait'} for your eyes${hold}. You had no hand in ${mine.length === 1 ? 'it' : 'any of them'}.`;
};

/** What waits longest stands first, on its car and among cars; what is only being done, behind. */
const byCar = (all: readonly Eyes[], seen: ReadonlyMap<string, Seen>, who: Person): readonly VerifyCar[] => {
  const sorted = [...all].sort((a, b) => age(a) - age(b));
  const groups = new Map<string, VerifyLine[]>();
  for (const eyes of sorted) {
    const on = seen.get(eyes.at.car.id);
    if (on === undefined) continue;
    const list = groups.get(on.car.id) ?? [];
    list.push(lineFor(on, eyes, who));
    groups.set(on.car.id, list);
  }
  return [...groups].flatMap(([id, lines]) => {
    const car = seen.get(id)?.car;
    return car === undefined ? [] : [{ car: { id, chassis: car.chassis, colour: car.colour }, lines }];
  });
};

const age = ({ since }: Eyes): number => (since === null ? Number.MAX_SAFE_INTEGER : Date.parse(since));

const lineFor = (seen: Seen, eyes: Eyes, who: Person): VerifyLine => {
  const { at, since, by, tool, stage } = eyes;
  const { joint } = at;
  const person = by === null ? null : seen.tag(by, since ?? undefined);
  const photos = photosAbout(seen, joint.stateKey);
  return {
    id: `${seen.car.id} ${joint.stateKey}`,
    href: sheetOf(seen, joint.stateKey),
    sign: stage === 'doubted' ? 'disturbed' : levelOf(at.row),
    name: seen.words.thing(joint.stateKey),
    ...methodOf(eyes),
    methodMore: tool === null ? '' : `was torqued with ${tool}`,
    by: person?.name ?? '',
    byInitials: person?.initials ?? '',
    when: since === null ? '' : seen.when(since),
    waiting: since === null ? '' : waitingWords(since, seen.facts.now),
    gate: holdsGate(eyes) ? dueMark(seen, joint.due).text : null,
    before: wantedBefore(seen, eyes),
    whyNot: whyNotWords(seen, eyes, who),
    ...(photos.length === 0 ? {} : { photos }),
  };
};

const methodOf = ({ at }: Eyes): Pick<VerifyLine, 'method'> => {
  switch (at.joint.verify) {
    case 'witnessed':
      return { method: 'watch while it is done' };
    case 're-applied': {
      const value = reappliedAt(at);
      return { method: value === '' ? 're-apply' : `re-apply ${value}` };
    }
    case 'seen':
    case null:
      return { method: 'see stripe and fastener' };
  }
};

/** Work that waits for it, such as what covers it. */
const wantedBefore = ({ plan, car, words }: Seen, { at }: Eyes): string | null => {
  const covering = plan.all.operations.find(
    (operation) =>
      car.operations[operation.stateKey]?.status !== 'finished' &&
      operation.needs.some(
        (need) =>
          need.kind === 'joint-at-level' && need.joint === at.joint.stateKey && need.level === 'verified',
      ),
  );
  return covering === undefined ? null : `wanted before ${words.thing(covering.stateKey)}`;
};

const whyNotWords = (seen: Seen, eyes: Eyes, who: Person): string => {
  const { at, mine, stage, people } = eyes;
  if (mine.may) return '';
  const [doubt] = at.doubts;
  if (stage === 'doubted' && doubt !== undefined)
    return `In doubt: ${seen.spoken(doubt.because)}. ${doubt.remedy === 'renew' ? 'It is renewed first' : doubt.remedy === 'recheck' ? 'It is tried again first' : 'It is torqued again first'}; verifying would prove nothing.`;
  const [hold] = holdsNaming(at, at.joint.stateKey);
  if (hold !== undefined) {
    const line = lineOf(seen, hold);
    return `${line.says} ${line.clears}`.trim();
  }
  const able = people.filter((each) => each.id !== who.id && whyNotOf(each, stage) === null);
  const others =
    able.length === 0 ? 'Nobody in the shop can now.' : `${named(able.map(({ name }) => name))} can.`;
  return `${asYou(mine.whyNot)} ${others}`;
};

/** What is said of others in the third person, said to the one who reads it. */
const asYou = (whyNot: string | null): string =>
  whyNot === null
    ? 'You may not verify it.'
    : `You ${whyNot
        .replace(/^is /, 'are ')
        .replace(/^doesn’t hold/, 'don’t hold')
        .replace(/, so can’t verify it$/, '')}.`;
