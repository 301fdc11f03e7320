import { PhotoStrip } from '@/components/photos/photo-strip';
import { TakePhotos } from '@/components/photos/take-photos';
import { Glyph } from '@/components/ui/glyph';
import { MOST_PHOTOS } from '@/lib/wire/photos';
import type { Shots } from './use-shots';
import type { Desk } from './use-desk';

const ID = 'so-photos';

/** What is photographed of the joint, and a way to photograph it: off the keys, in the column that is only looked at. */
export function SheetPhotos({ desk }: { readonly desk: Desk }) {
  const { view, shots } = desk;
  const { place, round, tell } = shots;
  return (
    <section className="so-photos" id={ID} aria-label="Photographs" tabIndex={-1}>
      {view.photos === undefined ? null : (
        <>
          <p className="label">Photographs of it</p>
          <PhotoStrip photos={view.photos} />
        </>
      )}
      <TakePhotos
        key={`${place.person} ${place.act} ${String(round)}`}
        place={place}
        label={view.photos === undefined ? 'Photographs, if they help' : 'One more'}
        most={MOST_PHOTOS}
        onTell={tell}
      />
    </section>
  );
}

/** Beside the signing key: what goes with it, and where it is taken. */
export function PhotoNote({ shots }: { readonly shots: Shots }) {
  const says = goesWith(shots);
  return (
    <p className={says === '' ? 'so-photonote none' : 'so-photonote'}>
      <Glyph name="photo" size={20} />
      {says === '' ? null : <span className="small">{says}</span>}
      <a className="so-link" href={`#${ID}`}>
        {says === '' ? 'Photograph it' : 'See'}
        <span className="vh">{says === '' ? '' : ' the photographs'}</span>
      </a>
    </p>
  );
}

/** Said wherever something is about to be signed or said with them; empty where there are none. */
export const goesWith = ({ kept }: Shots): string =>
  kept.length === 0
    ? ''
    : kept.length === 1
      ? 'One photograph goes with it'
      : `${String(kept.length)} photographs go with it`;

/** Why nothing is signed yet: a photograph that nobody has would be named. Empty where all are kept. */
export const photosLeft = ({ shots }: Desk): string =>
  shots.unsent === 0 ? '' : 'a photograph is not kept yet: wait for it, or take it off';
