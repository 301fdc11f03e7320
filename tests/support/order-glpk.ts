/**
 * The least money of an order as GLPK finds it, from a program written anew for this: one shipment from each supplier,
 * nobody late, freight by value that falls to nothing from its second step on.
 */
import GLPK from 'glpk.js/node';
import type { LP } from 'glpk.js/node';
import type { OrderProblem } from '@/lib/domain/shop/order';

const MOST = 1000;

export const leastByGlpk = async ({ lines, offers, suppliers }: OrderProblem): Promise<number> => {
  const glpk = await GLPK();
  const rows: LP['subjectTo'] = [];
  const prices: { name: string; coef: number }[] = [];
  const binaries: string[] = [];
  const generals: string[] = [];
  const atLeast = (lb: number, ...vars: readonly [name: string, coef: number][]): void => {
    rows.push({
      name: `row ${String(rows.length)}`,
      vars: vars.map(([name, coef]) => ({ name, coef })),
      bnds: { type: glpk.GLP_LO, lb, ub: 0 },
    });
  };
  const steps = offers.flatMap((offer) =>
    offer.steps.map(({ fromPacks, price }, index) => ({
      offer,
      fromPacks,
      price,
      name: `p${offer.key}_${String(index)}`,
    })),
  );
  for (const { name, price, offer, fromPacks } of steps) {
    generals.push(name);
    prices.push({ name, coef: price });
    binaries.push(`t${name}`);
    atLeast(0, [`t${name}`, MOST], [name, -1]);
    atLeast(0, [name, 1], [`t${name}`, -fromPacks]);
    atLeast(0, [`used${offer.supplier}`, MOST], [name, -1]);
  }
  for (const offer of offers)
    atLeast(
      -1,
      ...steps.filter((step) => step.offer === offer).map(({ name }): [string, number] => [`t${name}`, -1]),
    );
  for (const { item } of lines) {
    const wanted = lines
      .filter((line) => line.item === item)
      .reduce((sum, { quantity }) => sum + quantity, 0);
    const sold = steps.filter((step) => step.offer.item === item);
    atLeast(wanted, ...sold.map(({ name, offer }): [string, number] => [name, offer.packSize]));
  }
  for (const { key, minimumValue, freight } of suppliers) {
    const value = steps
      .filter((step) => step.offer.supplier === key)
      .map(({ name, price }): [string, number] => [name, price]);
    binaries.push(`used${key}`, `free${key}`);
    const fee = freight.steps[0]?.fee ?? 0;
    prices.push({ name: `used${key}`, coef: fee }, { name: `free${key}`, coef: -fee });
    atLeast(0, [`used${key}`, 1], [`free${key}`, -1]);
    atLeast(0, ...value, [`free${key}`, -(freight.steps[1]?.from ?? 0)]);
    atLeast(0, ...value, [`used${key}`, -minimumValue]);
  }
  const { result } = glpk.solve(
    {
      name: 'order',
      objective: { direction: glpk.GLP_MIN, name: 'money', vars: prices },
      subjectTo: rows,
      binaries,
      generals,
    },
    { msglev: glpk.GLP_MSG_OFF, mipgap: 0, tmlim: 20 },
  );
  if (result.status !== glpk.GLP_OPT) throw new Error(`GLPK ended with ${String(result.status)}.`);
  return Math.round(result.z);
};
