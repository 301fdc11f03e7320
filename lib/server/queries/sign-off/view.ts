/** The sign-off sheet of one joint, from rows that are loaded already. Pure, so that tests and the seed can look too. */
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import { jointCase } from '@/lib/domain/decide/joints';
import type { Facts } from '@/lib/domain/facts';
import { askOf, isAsked, offeredActs } from '@/lib/domain/joint-asks';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { unmet } from '@/lib/domain/unmet';
import { photosAbout } from '@/lib/server/queries/car/photos';
import { wordsFrom } from '@/lib/wire/views/event-words';
import { namesOf, withPeople } from '@/lib/wire/views/names';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { nameOfPerson } from '@/lib/wire/views/names';
import { whenWords, withTimes } from '@/lib/wire/views/when';
import { actViews, spokenLine } from './acts-view';
import { drawingView } from './drawing-view';
import { hardwareViews } from './hardware-view';
import { doubtViews, jointView, markViews, standingView } from './joint-view';
import type { Said } from './joint-view';
import { NO_STORES } from './lot-choices';
import type { Stores } from './lot-choices';
import { peopleViews } from './people-view';
import { toolViews } from './tool-view';

/** Null where the car's plan has no such joint. */
export const viewOfJoint = (
  plan: CompiledPlan,
  car: Car,
  facts: Facts,
  key: StateKey,
  zone: string,
  stores: Stores = NO_STORES,
): SignOffView | null => {
  const joint = plan.joints.get(key);
  if (joint === undefined) return null;
  const at = jointCase({ command: '', facts, car, plan }, joint);
  const entry = plan.document.joints?.[joint.key];
  const slot = entry?.slot ?? false;
  const spoken = withTimes(zone, facts.day);
  const said: Said = {
    spoken,
    when: whenWords(zone, facts.day),
    person: (id, at) => nameOfPerson(facts.people, id, at),
  };
  const view = jointView(at, entry, said);
  const tools = toolViews(at, slot, spoken);
  const next = askOf(at, offeredActs(at));
  const photos = photosAbout(shownBy(plan, car, facts, said), joint.stateKey);
  return {
    car: {
      id: car.id,
      chassis: car.chassis,
      colour: car.colour,
      model: plan.document.plan,
      revision: plan.document.revision,
      version: car.version,
    },
    judgedAt: facts.judgedAt,
    day: facts.day,
    joint: view,
    doubts: doubtViews(at, said),
    marks: markViews(at, said),
    standing: standingView(at, said),
    drawing: drawingView(view, entry?.pattern),
    hardware: hardwareViews(at, spoken, stores),
    tools,
    adapters: Object.values(facts.adapters),
    people: peopleViews(at),
    acts: actViews(at, slot, tools, spoken),
    next,
    isAsked: isAsked(next),
    needs: unmet(plan, car, facts, joint.finalNeeds).map((refusal) =>
      spokenLine(refusalLine(car.id, refusal, plan, facts.people), spoken),
    ),
    ...(photos.length === 0 ? {} : { photos }),
  };
};

/** How the photographs of a car are named here. */
const shownBy = (
  plan: CompiledPlan,
  car: Car,
  { people }: Facts,
  { person, when }: Said,
): Parameters<typeof photosAbout>[0] => ({
  car,
  words: wordsFrom({
    nameOf: withPeople(namesOf(plan.document), people),
    people,
    stages: plan.stages,
    signatures: car.signatures,
  }),
  tag: (id, at) => ({ name: person(id, at) }),
  when,
});
