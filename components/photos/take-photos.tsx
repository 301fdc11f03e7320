'use client';

import { Glyph } from '@/components/ui/glyph';
import type { PhotoPlace } from '@/lib/offline/photo-drafts';
import { LONGEST_SIDE, PHOTO_TYPES } from '@/lib/wire/photos';
import { usePhotos } from './use-photos';
import type { TakenPhoto } from './use-photos';
import './take-photos.css';

interface TakePhotosProps {
  /** What they are taken for: under it they wait on the device. Another place is another component, by its key. */
  readonly place: PhotoPlace;
  readonly label: string;
  readonly most: number;
  /** Those that an act may name, and how many it may not name yet. */
  readonly onTell: (kept: readonly string[], unsent: number) => void;
}

/** Taken with the device's camera, or chosen. Each is sent at once, so that the act can name it. */
export function TakePhotos({ place, label, most, onTell }: TakePhotosProps) {
  const { taken, take, again, remove } = usePhotos(place, most, onTell);
  return (
    <fieldset className="afield photofield">
      <legend className="label">{label}</legend>
      {taken.length === 0 ? null : (
        <ul>
          {taken.map((photo, index) => (
            <One
              key={photo.key}
              photo={photo}
              number={index + 1}
              onAgain={() => again(photo)}
              onRemove={() => remove(photo)}
            />
          ))}
        </ul>
      )}
      {taken.length >= most ? null : (
        <div className="takes">
          <TakeButton word="Take a photograph" camera many={false} onTake={take} />
          <TakeButton word="Choose a file" camera={false} many={most > 1} onTake={take} />
        </div>
      )}
      {taken.length === 0 ? null : (
        <p className="small dim">
          Kept are a copy of at most {LONGEST_SIDE} pixels, without place or camera, and the fingerprint of
          the original. The original stays on this device.
        </p>
      )}
    </fieldset>
  );
}

interface TakeButtonProps {
  readonly word: string;
  readonly camera: boolean;
  readonly many: boolean;
  readonly onTake: (files: readonly File[]) => void;
}

/** A file input behind its label: by keyboard it is the input that has the focus. */
function TakeButton({ word, camera, many, onTake }: TakeButtonProps) {
  return (
    <label className="btn take">
      <Glyph name={camera ? 'photo' : 'add'} size={20} /> {word}
      <input
        type="file"
        accept={PHOTO_TYPES.join(',')}
        multiple={many}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          onTake([...(event.target.files ?? [])]);
          // The same file may be chosen again after it was taken off.
          event.target.value = '';
        }}
      />
    </label>
  );
}

interface OneProps {
  readonly photo: TakenPhoto;
  readonly number: number;
  readonly onAgain: () => void;
  readonly onRemove: () => void;
}

function One({ photo, number, onAgain, onRemove }: OneProps) {
  const { url, state, part, says, copied, name, back, onlyHere } = photo;
  const which = `photograph ${String(number)}`;
  return (
    <li>
      {url === null ? (
        <span className="nopic">
          <Glyph name="photo" size={32} />
        </span>
      ) : (
        <img src={url} alt={`Taken now, ${which}${name === '' ? '' : `, ${name}`}`} />
      )}
      <div className="t">
        {state === 'failed' ? (
          <p className="stop">
            <Glyph name="failed" size={20} /> <b>Not kept.</b> {says}
          </p>
        ) : state === 'kept' ? (
          <p>
            <Glyph name="passed" size={20} /> Kept
            <span className="small dim"> fingerprint {copied?.about.sha256.slice(0, 12)}</span>
          </p>
        ) : (
          <p>
            {state === 'drawn' ? 'Being made smaller' : 'On its way'}
            <progress aria-label={`Sending ${which}`} value={part} max={1} />
          </p>
        )}
        {back === null ? null : <p className="small dim">Taken {back}, brought back</p>}
        {onlyHere === null ? null : (
          <p className="small">
            <Glyph name="gap" size={16} /> <b>A reload loses it.</b> {onlyHere}
          </p>
        )}
        <p className="acts">
          {state === 'failed' && copied !== null ? (
            <button type="button" className="btn" onClick={onAgain}>
              Send again<span className="vh">: {which}</span>
            </button>
          ) : null}
          <button type="button" className="btn" onClick={onRemove}>
            Take off<span className="vh">: {which}</span>
          </button>
        </p>
      </div>
    </li>
  );
}
