/** What the page of a car's cost is made from. It holds prices: for leads and owners only. */

export interface CostView {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly says: string;
  /** All that was spent so far, scrap too, and what the whole car is planned to cost. */
  readonly total: string;
  readonly planned: string;
  /** `£1,200.00 of it is scrap`; null = none. */
  readonly scrapSays: string | null;
  /** Share of the plan, 0 to 1, for a drawing; what is beyond it is said in words. */
  readonly share: number;
  readonly stages: readonly CostRow[];
  /** The stages together. */
  readonly sum: CostRow;
  readonly scrap: string;
  readonly materials: readonly MaterialView[];
  /** Those that are folded away: how many, and what they come to. */
  readonly folded: { readonly from: number; readonly says: string } | null;
  readonly scrapped: readonly ScrapView[];
  readonly unpriced: readonly UnpricedView[];
  /** What these figures can't know. */
  readonly notes: readonly string[];
  readonly basis: string;
  /** What the plan sends to other firms. */
  readonly sent: readonly SentView[];
  readonly plan: string;
  readonly rates: readonly RateView[];
  readonly today: string;
}

export interface CostCell {
  /** `·` stands for nothing. */
  readonly soFar: string;
  readonly planned: string;
}

export interface CostRow {
  readonly key: string;
  /** The number of the stage; null = of no stage. */
  readonly number: number | null;
  readonly name: string;
  readonly material: CostCell;
  readonly hours: CostCell;
  readonly outside: CostCell;
  readonly freight: CostCell;
  readonly total: CostCell;
  readonly difference: string;
  /** `over`, `under`; `to come` where the car has not left that stage. */
  readonly against: string;
  /** `12 h 30 min of 14 h`; empty where there is none. */
  readonly time: string;
}

export interface MaterialView {
  readonly key: string;
  readonly name: string;
  readonly quantity: string;
  readonly basis: string;
  readonly money: string;
}

export interface ScrapView {
  readonly name: string;
  readonly quantity: string;
  readonly says: string;
  /** Null = no price known. */
  readonly money: string | null;
}

export interface UnpricedView {
  readonly name: string;
  readonly says: string;
}

export interface SentView {
  readonly key: string;
  readonly name: string;
  /** Null = nobody has said one. */
  readonly money: string | null;
}

export interface RateView {
  readonly id: string;
  readonly says: string;
  readonly isNow: boolean;
}
