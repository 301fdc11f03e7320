/** How far a shop is set up: each step in one line. */
import 'server-only';
import type { Database } from '@/lib/server/database';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { UNNAMED } from '@/lib/server/new-shop';
import type { SetUpStep, SetUpSteps } from '@/lib/wire/views/set-up';

type Step = Omit<SetUpStep, 'isLeft'>;

export const setUpSteps = async (db: Database): Promise<SetUpSteps> => {
  const [shop, { name, zone }, cars, tablets] = await Promise.all([
    loadShop(db),
    shopSetting(db),
    db.car.count(),
    db.device.findMany({
      where: { enrolledAt: { not: null }, revokedAt: null },
      select: { name: true },
      orderBy: { name: 'asc' },
    }),
  ]);
  const here = Object.values(shop.people).filter(({ left }) => !left);
  const tools = Object.values(shop.tools);
  const plans = Object.values(shop.plans);
  const steps: readonly Step[] = [
    {
      key: 'shop',
      says: `${name}; its days are those of ${zone}`,
      isDone: name !== UNNAMED,
    },
    {
      key: 'people',
      says:
        here.length < 2
          ? 'Nobody but you yet. A critical joint asks for a second person.'
          : `${String(here.length)} people: ${some(here.map(({ name }) => name))}`,
      isDone: here.length > 1,
    },
    {
      key: 'tablets',
      says:
        tablets.length === 0
          ? 'None yet: technicians sign in on tablets that you enrol.'
          : `${String(tablets.length)}: ${some(tablets.flatMap(({ name }) => name ?? []))}`,
      isDone: tablets.length > 0,
    },
    {
      key: 'tools',
      says:
        tools.length === 0
          ? 'None yet: joints can be snug, and a final asks for a tool.'
          : `${String(tools.length)}: ${some(tools.map(({ name }) => name))}`,
      isDone: tools.length > 0,
    },
    {
      key: 'plans',
      says:
        plans.length === 0
          ? 'from a file, or typed here'
          : some(plans.map(({ model, revision }) => `${model} ${revision}`)),
      isDone: plans.length > 0,
    },
    {
      key: 'cars',
      says: cars === 0 ? 'chassis number, options, paint' : `${String(cars)} begun so far`,
      isDone: cars > 0,
    },
  ];
  return { steps: steps.map(withLeft), isBeginning: cars === 0 };
};

const withLeft = (step: Step, at: number, steps: readonly Step[]): SetUpStep => ({
  ...step,
  isLeft: !step.isDone && steps.slice(at).some(({ isDone }) => isDone),
});

const MOST_NAMED = 3;

const some = (names: readonly string[]): string =>
  names.length <= MOST_NAMED
    ? names.join(', ')
    : `${names.slice(0, MOST_NAMED).join(', ')} and ${String(names.length - MOST_NAMED)} more`;
