import { DeskProvider } from '@/components/act/desk-context';
import { PhotoSheet } from '@/components/photos/photo-sheet';
import type { CarView } from '@/lib/wire/views/car';
import { Again } from './again';
import { DonorSheet } from './donor-sheet';
import { Ends } from './ends';
import { FoldedRows } from './folded-rows';
import { GateSheet } from './gate-sheet';
import { CarHead } from './head';
import { Lately } from './lately';
import { PlacesProvider } from './places';
import { SideRows } from './side-rows';
import { Trouble } from './trouble';
import { Work } from './work';
import './car.css';

interface CarPageProps {
  readonly view: CarView;
  /** A job that the address asks for. */
  readonly job: string | null;
  /** A signature that the address asks to strike. */
  readonly signature: string | null;
  /** A lead or an owner is led to what it cost. */
  readonly seesCost: boolean;
}

/** One car: loose ends first. */
export function CarPage({ view, job, signature, seesCost }: CarPageProps) {
  const { head, ends, work, gate, desk, places, parts } = view;
  const open = work.filter((group) => group.isOpen).map(({ id }) => id);
  return (
    <DeskProvider desk={desk}>
      <PlacesProvider
        ways={places}
        asked={job === null ? null : `job:${job}`}
        open={open}
        version={view.version}
      >
        <Again at={view.again} />
        <main className="car">
          <CarHead view={view} seesCost={seesCost} />
          <div className="cols">
            <div className="left">
              <Ends groups={ends} says={head.counts.endsSay} />
              <Work groups={work} />
              <FoldedRows
                id="parts"
                title="Parts"
                says="of the donor, bought and made: here, fitted, owed"
                fold="all parts, each with what can be said of it"
                rows={parts}
              />
              <DonorSheet car={view.id} parts={view.donor} />
              <PhotoSheet photos={view.photos} person={desk.me.id} car={view.id} version={view.version} />
            </div>
            <div className="side">
              {head.delivered ? null : (
                <GateSheet gate={gate} chassis={head.chassis} ends={head.counts.ends} />
              )}
              <Trouble first={signature === null ? null : 'strike-signature'} />
              <Lately car={view.id} entries={view.lately} />
              <FoldedRows
                id="conditions"
                title="Conditions"
                says="what is physically so, since when, by what"
                fold={conditionsText(view.conditions)}
                rows={view.conditions}
              />
              <SideRows
                id="options"
                title="Options"
                says="what the plan offers, what was chosen, and what it changes"
                none="This plan offers no options: every car of it is built the same."
                rows={view.options}
              />
            </div>
          </div>
        </main>
      </PlacesProvider>
    </DeskProvider>
  );
}

const conditionsText = (rows: CarView['conditions']): string => {
  const so = rows.filter(({ isSo }) => isSo).length;
  return `${String(so)} so, ${String(rows.length - so)} not`;
};
