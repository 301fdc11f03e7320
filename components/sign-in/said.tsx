import { Glyph } from '@/components/ui/glyph';

export type SignInSaid = 'busy' | 'form' | 'out' | 'enrolled' | 'set-elsewhere' | 'tablet';

const WORDS: Readonly<Record<SignInSaid, string>> = {
  busy: 'Too many are signing in at once. Nothing was looked at; try again in a moment.',
  form: 'This page was too old, or the browser keeps no cookies for this shop. Nothing was looked at; try once more.',
  out: 'Signed out. Nobody can go on from this browser with what was open here.',
  tablet: 'This is a tablet of the shop now: technicians sign in here with name and PIN.',
  enrolled: 'It is set, and nobody else knows it. Sign in with it now.',
  'set-elsewhere': 'Your PIN is set, and nobody else knows it. Sign in with it on a tablet of the shop.',
};

/** What came of the last thing one did, above the form. */
export function Said({ says }: { readonly says: SignInSaid }) {
  const isGood = says !== 'busy' && says !== 'form';
  return (
    <p className={isGood ? 'said' : 'said bad'} role="status">
      <Glyph name={isGood ? 'passed' : 'failed'} /> <span>{WORDS[says]}</span>
    </p>
  );
}
