/** The floor as every board shows it, kept row by row: a car is looked at when it changed, and once for everybody. */
import 'server-only';
import type { Car } from '@/lib/domain/car/rows';
import type { Facts } from '@/lib/domain/facts';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Floor as FloorNews } from '@/lib/wire/live';
import type { Database } from '@/lib/server/database';
import { carsAtLeast, loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { Setting } from '@/lib/server/load/shop';
import { floorSays, groupsOf, rowOf } from '@/lib/server/queries/board';
import type { Row } from '@/lib/server/queries/board/row';
import { trayOf } from '@/lib/server/queries/board/tray';
import { loadSupplies } from '@/lib/server/queries/kits/supplies';

interface Known {
  readonly shop: Shop;
  readonly setting: Setting;
}

interface Kept {
  readonly row: Row;
  /** As it was sent, so that a row that came out the same is not sent again. */
  readonly text: string;
}

/** What happened since: cars with a new version, and whether anything that all cars rest on did. */
export interface Changed {
  readonly cars: ReadonlyMap<string, number>;
  /**
   * The shop's books: a suspect tool or a bad lot puts joints of any car in doubt. That a counted tool was used makes no
   * new version of the shop and needs none here: cycles bear on what may be signed next, on no row.
   */
  readonly shop: boolean;
}

export class Floor {
  private readonly db: Database;
  private known: Known | null = null;
  private readonly cars = new Map<string, Car>();
  private readonly rows = new Map<string, Kept>();
  /** As it was sent. */
  private toldTray = '';

  constructor(db: Database) {
    this.db = db;
  }

  /** Looks at what changed; gives what every board has to show for it. */
  async look(changed: Changed): Promise<FloorNews> {
    const isFirst = this.known === null;
    const known = this.known === null || changed.shop ? await this.books() : this.known;
    const fresh = isFirst
      ? await loadFloor(this.db)
      : await carsAtLeast(
          this.db,
          [...changed.cars].map(([id, version]) => ({ id, version })),
        );
    for (const car of fresh) {
      if (!car.delivered) this.cars.set(car.id, car);
      else if (this.cars.delete(car.id)) this.rows.delete(car.id);
    }
    const news = await this.remade(
      known,
      changed.shop || isFirst ? null : new Set(fresh.map(({ id }) => id)),
    );
    // Only now: what did not come to an end is begun from the beginning.
    this.known = known;
    return news;
  }

  private async books(): Promise<Known> {
    const [shop, setting] = await Promise.all([loadShop(this.db), shopSetting(this.db)]);
    return { shop, setting };
  }

  /** Time has passed: a wait is over, a calibration too. Null where no row shows it. */
  async later(): Promise<FloorNews | null> {
    if (this.known === null) return null;
    const news = await this.remade(this.known, null);
    return news.rows.length === 0 ? null : news;
  }

  /** What may begin and what it lacks: null where that is as it was told last. */
  async tray(): Promise<FloorNews | null> {
    if (this.known === null) return null;
    const { shop, setting } = this.known;
    const cars = [...this.cars.values()].sort(byChassis);
    const facts = await this.facts(this.known, cars);
    const rows = cars.flatMap(({ id }) => this.rows.get(id)?.row ?? []);
    const tray = trayOf(rows, await loadSupplies(this.db, shop, cars, facts.day));
    const text = JSON.stringify(tray);
    if (text === this.toldTray) return null;
    this.toldTray = text;
    return { says: floorSays(rows, facts, setting), groups: headsOf(rows, facts), rows: [], tray };
  }

  /** `of`: only these cars' rows are made anew; null = all. */
  private async remade(known: Known, of: ReadonlySet<string> | null): Promise<FloorNews> {
    const cars = [...this.cars.values()].sort(byChassis);
    const facts = await this.facts(known, cars);
    const rows: Row[] = [];
    const different: Row[] = [];
    for (const car of cars) {
      const before = this.rows.get(car.id);
      if (before !== undefined && of !== null && !of.has(car.id)) {
        rows.push(before.row);
        continue;
      }
      const row = rowOf(car, facts, known.setting.zone);
      if (row === null) continue;
      rows.push(row);
      const text = JSON.stringify(row.car);
      if (text !== before?.text) different.push(row);
      this.rows.set(car.id, { row, text });
    }
    return {
      says: floorSays(rows, facts, known.setting),
      groups: headsOf(rows, facts),
      rows: different.map(({ car }) => car),
    };
  }

  private async facts({ shop, setting }: Known, cars: readonly Car[]): Promise<Facts> {
    const plans = await loadPlans(
      this.db,
      cars.map((car) => car.plan),
    );
    return viewFacts(shop, cars, plans, '', new Date().toISOString(), setting.zone);
  }
}

const headsOf = (rows: readonly Row[], facts: Facts): FloorNews['groups'] =>
  groupsOf(rows, facts).map((group) => ({ ...group, cars: group.cars.map(({ id }) => id) }));

/** As `loadFloor` orders them. */
const byChassis = (a: Car, b: Car): number => (a.chassis < b.chassis ? -1 : a.chassis > b.chassis ? 1 : 0);
