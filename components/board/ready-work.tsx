import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { ReadyTray, TrayList } from '@/lib/wire/views/board';
import './ready-work.css';

/** Below the tracks: what may begin now, and what may but for parts, with what is missing and when it comes. */
export function ReadyWork({ tray: { ready, butForParts } }: { readonly tray: ReadyTray }) {
  if (ready.jobs.length + butForParts.jobs.length === 0) return null;
  return (
    <section className="readytray" aria-label="Work that may begin">
      <List title="Ready" list={ready} />
      <List title="Ready but for parts" list={butForParts} />
    </section>
  );
}

function List({ title, list: { jobs, more } }: { readonly title: string; readonly list: TrayList }) {
  if (jobs.length === 0) return null;
  return (
    <div className="traylist">
      <h2>{title}</h2>
      <ul>
        {jobs.map(({ id, href, chassis, colour, key, name, takes, lacks }) => (
          <li key={id}>
            <a className={lacks === '' ? 'jobplate' : 'jobplate lacks'} href={href}>
              <span className="top">
                <CarTag chassis={chassis} colour={colour} /> <span className="code nb">{key}</span>
                <span className="takes num">{takes}</span>
              </span>
              <span>{name}</span>
              {lacks === '' ? null : (
                <span className="small">
                  <Glyph name="owed" size={20} /> {lacks}
                </span>
              )}
            </a>
          </li>
        ))}
        {more === 0 ? null : <li className="more dim">and {more} more, on the cars’ pages</li>}
      </ul>
    </div>
  );
}
