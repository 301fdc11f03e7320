/** What a plate's code says, read by a scanner or typed by hand. */
import { decoded } from '@/lib/wire/decoded';

/** Case, blanks and dashes are how a hand writes it; a code may also be the address of the car's page. */
const bare = (text: string): string => {
  const page = /\/cars\/([^/?#\s]+)/.exec(text);
  return decoded(page?.[1] ?? text)
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
};

export const isPlateOf = (text: string, car: { readonly id: string; readonly chassis: string }): boolean => {
  const given = bare(text);
  return given !== '' && (given === bare(car.chassis) || given === bare(car.id));
};
