/** Which passwords and PINs are taken. */
import { describe, expect, test } from 'vitest';
import { SECRET_FAULTS, passwordFaults, pinFaults } from '@/lib/server/auth/secret-rules';

const NAMES = ['Quernmill Coachworks', 'Tobit Fenn', 'tobit'];

describe('passwords', () => {
  test.each([
    ['four words', 'bolts under a wet tarpaulin'],
    ['fifteen characters', 'krz7 vult oande'],
    ['two hundred', 'a wet Tuesday in the spray booth. '.repeat(6).slice(0, 200)],
    ['no Latin letters', 'седло дождь верстак'],
    ['emoji count as one each', '🐢 walks past 🔧🔩'],
    ['a common word among others', 'password printed on gaskets'],
    ['the shop’s name among others', 'quernmill has seven green stools'],
    ['made by a manager', 'x7!Kq92#mPz4Lw8v'],
  ])('%s', (_, password) => {
    expect(passwordFaults(password, NAMES)).toEqual([]);
  });

  test.each([
    ['fourteen characters', 'krz7 vult oand', 'password-too-short'],
    ['fourteen emoji are no twenty-eight', '🔧'.repeat(14), 'password-too-short'],
    ['two hundred and one', 'wet Tuesday '.repeat(17).slice(0, 201), 'password-too-long'],
    ['one sign', 'aaaaaaaaaaaaaaaaaa', 'password-repeats'],
    ['a short piece over and over', 'wetwetwetwetwetwet', 'password-repeats'],
    ['figures in a row', '123456789012345', 'password-repeats'],
    ['along the keys', 'qwertyuiopasdfgh', 'password-repeats'],
    ['the alphabet backwards', 'zyxwvutsrqponmlk', 'password-repeats'],
    ['twice a common word', 'passwordpassword1', 'password-common'],
    ['common words', 'WelcomePassword2026!', 'password-common'],
    ['common words with the usual swaps', 'P@ssw0rd-L3tm31n-99', 'password-common'],
    ['the one from the comic', 'correct horse battery staple', 'password-common'],
    ['the shop’s name', 'QuernmillCoachworks', 'password-names'],
    ['the shop’s name and a year', 'quernmill coachworks 2026', 'password-names'],
    ['one’s own name', 'TobitFenn-TobitFenn7', 'password-names'],
  ])('%s: no', (_, password, fault) => {
    expect(passwordFaults(password, NAMES)).toEqual([fault]);
  });
});

describe('PINs', () => {
  test.each(['590372', '418263', '804617', '100294'])('%s', (pin) => {
    expect(pinFaults(pin)).toEqual([]);
  });

  test.each(['', '12345', '1234567', '12a456', '１２３４５６', '59037 '])('%s: not six figures', (pin) => {
    expect(pinFaults(pin)).toEqual(['pin-not-six-figures']);
  });

  test.each([
    '000000',
    '111111',
    '123456',
    '654321',
    '901234',
    '121212',
    '123123',
    '112233',
    '123321',
    '147258',
    '159753',
  ])('%s: everybody tries it first', (pin) => {
    expect(pinFaults(pin)).toEqual(['pin-simple']);
  });
});

test('every fault says what to do instead', () => {
  for (const says of Object.values(SECRET_FAULTS)) expect(says).toMatch(/^[A-Z].*\.$/);
});
