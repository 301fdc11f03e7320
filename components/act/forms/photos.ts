/** Photographs beside what a form says: taken, sent, and only then named in the claim. */
import type { FieldSpec, FormOf, Values } from '@/components/act/form';
import { list, text } from '@/components/act/form';
import { MOST_PHOTOS } from '@/lib/wire/photos';
import type { ActRef } from '@/lib/wire/views/desk';

/** What the photographs of an act wait under on the device. */
export const photoAct = ({ type, key }: Pick<ActRef, 'type' | 'key'>): string => `${type} ${key}`;

const field = (act: ActRef): FieldSpec => ({
  kind: 'photo',
  name: 'photos',
  label: 'Photographs',
  most: MOST_PHOTOS,
  act: photoAct(act),
});

/** The field says under this name how many are not kept yet. */
export const unsentName = (name: string): string => `${name}:unsent`;

/** Why it can't be given yet: a photograph that nobody has would be named. */
export const unsentPhotos = (values: Values, name: string): string | null => {
  const unsent = text(values, unsentName(name));
  return unsent === '' || unsent === '0'
    ? null
    : unsent === '1'
      ? 'A photograph is not kept yet. Wait for it, send it again, or take it off.'
      : `${unsent} photographs are not kept yet. Wait for them, send them again, or take them off.`;
};

/** The same form, with photographs. */
export const withPhotos =
  (form: FormOf): FormOf =>
  (act, desk, values) => {
    const spec = form(act, desk, values);
    const photos = list(values, 'photos');
    return {
      ...spec,
      fields: [...spec.fields, field(act)],
      missing: spec.missing ?? unsentPhotos(values, 'photos'),
      claim: () => (photos.length === 0 ? spec.claim() : { ...spec.claim(), photos }),
    };
  };
