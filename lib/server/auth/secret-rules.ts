/** Which passwords and PINs are good enough: length and surprise, no rules about signs and figures. */

export type SecretFault =
  | 'password-too-short'
  | 'password-too-long'
  | 'password-common'
  | 'password-repeats'
  | 'password-names'
  | 'pin-not-six-figures'
  | 'pin-simple';

export const SECRET_FAULTS: Readonly<Record<SecretFault, string>> = {
  'password-too-short':
    'A password has at least 15 characters. Three or four words that don’t belong together are easy to keep.',
  'password-too-long': 'A password has at most 200 characters.',
  'password-common':
    'This is made of words that everybody tries first. Take words that don’t belong together.',
  'password-repeats': 'This repeats itself or runs along the keys. Take words that don’t belong together.',
  'password-names': 'This is made of your name or the shop’s. Take words that nobody connects with you.',
  'pin-not-six-figures': 'A PIN is six figures.',
  'pin-simple': 'This PIN is one that everybody tries first. Take six figures with no pattern.',
};

export const isSecretFault = (code: string): code is SecretFault => Object.hasOwn(SECRET_FAULTS, code);

const LEAST = 15;
const MOST = 200;

/** What is left after taking out what everybody would guess must still be this long. */
const LEAST_OWN = 6;

/** Parts of the passwords that stand in every list of stolen ones; plurals and figures behind them count with them. */
const COMMON =
  'password passphrase passwort contrasena welcome letmein login signin admin administrator root user guest master secret default changeme trustno superman batman monkey dragon shadow sunshine princess football baseball soccer hockey summer winter spring autumn monday friday january december iloveyou love hello test demo qwerty azerty asdf zxcv correct horse battery staple mustang ferrari porsche corvette camaro jaguar harley yankees michael jennifer jordan charlie thomas ashley nicole daniel freedom whatever starwars pokemon computer internet server workshop garage coachworks motors slipmark car cars engine torque wrench mechanic technician owner lead please access open enter new my the this is our your and for'.split(
    ' ',
  );

const RUNS = ['abcdefghijklmnopqrstuvwxyz', '01234567890', 'qwertyuiop', 'asdfghjkl', 'zxcvbnm'];

/** Faults of a password; none = good. `names`: the shop's, the person's, whatever stands over the door. */
export const passwordFaults = (password: string, names: readonly string[]): readonly SecretFault[] => {
  const length = Array.from(password.normalize('NFKC')).length;
  if (length < LEAST) return ['password-too-short'];
  if (length > MOST) return ['password-too-long'];
  const plain = plainly(password);
  if (isRepeated(plain) || new Set(plain).size < 5 || without(plain, runsIn(plain)).length < LEAST_OWN)
    return ['password-repeats'];
  const named = names.flatMap((name) => name.split(/\s+/).map(plainly)).filter((word) => word.length >= 3);
  const own = without(plain, named);
  if (own !== plain && without(own, COMMON).length < LEAST_OWN) return ['password-names'];
  return without(plain, COMMON).length < LEAST_OWN ? ['password-common'] : [];
};

/** As a guesser sees it: small letters and figures only, the usual swaps undone. */
const plainly = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[@4]/g, 'a')
    .replace(/[$5]/g, 's')
    .replace(/0/g, 'o')
    .replace(/[1!|]/g, 'i')
    .replace(/3/g, 'e')
    .replace(/7/g, 't')
    .replace(/[^\p{L}\p{N}]/gu, '');

/** The longest words go first, so that a short one doesn't break a long one; years and counts behind them go too. */
const without = (plain: string, words: readonly string[]): string => {
  const left = [...words]
    .sort((a, b) => b.length - a.length)
    .reduce((text, word) => text.replaceAll(word, ' '), plain);
  return left === plain ? plain : left.replace(/[ \p{N}]/gu, '');
};

/** Is it some short piece over and over? */
const isRepeated = (plain: string): boolean => {
  const period = (plain + plain).indexOf(plain, 1);
  return period * 2 <= plain.length;
};

/** Pieces of four or more that run along the alphabet or a row of keys, forwards or backwards. */
const runsIn = (plain: string): readonly string[] => {
  const found: string[] = [];
  for (const run of RUNS.map(plainly).flatMap((row) => [row, Array.from(row).reverse().join('')]))
    for (let from = 0; from + 4 <= run.length; from += 1)
      for (let to = run.length; to >= from + 4; to -= 1)
        if (plain.includes(run.slice(from, to))) found.push(run.slice(from, to));
  return found;
};

/** Faults of a PIN; none = good. */
export const pinFaults = (pin: string): readonly SecretFault[] => {
  if (!/^\d{6}$/.test(pin)) return ['pin-not-six-figures'];
  const steps = Array.from(pin)
    .slice(1)
    .map((figure, at) => (Number(figure) - Number(pin[at]) + 10) % 10);
  const isRun = steps.every((step) => step === steps[0] && (step <= 1 || step === 9));
  const isRepeatedPin = /^(\d{1,3})\1+$/.test(pin);
  const isPairs = /^(\d)\1(\d)\2(\d)\3$/.test(pin);
  const isMirrored = Array.from(pin).reverse().join('') === pin;
  return isRun || isRepeatedPin || isPairs || isMirrored || KEYPAD.has(pin) ? ['pin-simple'] : [];
};

/** Figures drawn on the keys. */
const KEYPAD = new Set([
  '147258',
  '258369',
  '369258',
  '159357',
  '357159',
  '159753',
  '753159',
  '147369',
  '789456',
  '456789',
  '123789',
  '741852',
  '963852',
  '852963',
]);
