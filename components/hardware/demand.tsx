'use client';

import Link from 'next/link';
import { Fragment, useState } from 'react';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { HardwareItem, HardwareView } from '@/lib/wire/views/hardware';
import { ItemWhy } from './item-why';
import './hardware.css';

interface DemandProps {
  readonly view: HardwareView;
  /** What the shelf covers as well. */
  readonly isAll: boolean;
}

/** Items by cars: how many each still needs, what there is of them, and what must be bought by when. */
export function Demand({ view, isAll }: DemandProps) {
  const { says, cars, items, basis, counts } = view;
  const [open, setOpen] = useState<string | null>(null);
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Hardware demand</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href={isAll ? '/hardware' : '/hardware?show=all'} prefetch={false}>
            {isAll ? `Only what is short, ${String(counts.short)}` : `All ${String(counts.all)} items`}
          </Link>
        </p>
      </div>
      {items.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="passed" size={32} />
          <div>
            <h2>Nothing is short</h2>
            <p>What a car needs and the shelf does not cover stands here, with the reason and the day.</p>
          </div>
        </section>
      ) : (
        <section className="sheet" aria-label="What is needed">
          <table className="demand">
            <thead>
              <tr>
                <th scope="col">Item</th>
                {cars.map((car) => (
                  <th key={car.id} scope="col" className="r percar">
                    <CarTag chassis={car.chassis} colour={car.colour} />
                  </th>
                ))}
                <th scope="col" className="r least">
                  Minimum
                </th>
                <th scope="col" className="r">
                  Need
                </th>
                <th scope="col" className="shelf">
                  Shelf
                </th>
                <th scope="col" className="r">
                  Short
                </th>
                <th scope="col" className="r">
                  By
                </th>
              </tr>
            </thead>
            <tbody>
              {items.map((item) => (
                <Fragment key={item.key}>
                  <ItemRow
                    item={item}
                    isOpen={open === item.key}
                    onPress={() => setOpen(open === item.key ? null : item.key)}
                  />
                  {open === item.key ? <ItemWhy item={item} span={cars.length + 6} /> : null}
                </Fragment>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <p className="small dim">
        Press an item to see why. Lots that are kept apart or gone off do not count. {basis}
      </p>
    </>
  );
}

interface ItemRowProps {
  readonly item: HardwareItem;
  readonly isOpen: boolean;
  readonly onPress: () => void;
}

function ItemRow({ item, isOpen, onPress }: ItemRowProps) {
  const { key, name, unit, perCar, minimum, need, shelf, covered, held, buy, by } = item;
  return (
    <tr className={isOpen ? 'on' : undefined}>
      <th scope="row">
        <button type="button" aria-expanded={isOpen} onClick={onPress}>
          <b>{name}</b>
          <span className="small dim">{unit === '' ? key : `${key}, ${unit}`}</span>
        </button>
      </th>
      {perCar.map((quantity, index) => (
        <td key={index} className="r num percar">
          {quantity === '' ? <span className="dim">·</span> : quantity}
        </td>
      ))}
      <td className="r num least">{minimum === '' ? <span className="dim">·</span> : minimum}</td>
      <td className="r num">
        <b>{need}</b>
      </td>
      <td className="shelf">
        <span>
          <svg width="92" height="9" aria-hidden="true">
            <rect className="bar" width="92" height="9" />
            <rect className="has" width={Math.round(92 * covered)} height="9" />
          </svg>
          <span className="small num">{shelf}</span>
          {held === null ? null : (
            <span className="small held">
              <Glyph name="hold" size={16} /> {held} held
            </span>
          )}
        </span>
      </td>
      <td className="r num buy">{buy ?? <span className="go">none</span>}</td>
      <td className={by?.isToday === true ? 'r small stop' : 'r small'}>{by?.text ?? ''}</td>
    </tr>
  );
}
