/** The words a size line may hold: what kind of thing it is, and its finish. One table for reading and for writing. */

export type Family = 'bolt' | 'nut' | 'tube nut' | 'washer' | 'pin';

interface KindEntry {
  readonly family: Family;
  /** May it be written without a length? Only bolts and pins have one. */
  readonly length: 'must' | 'may' | 'never';
  /** Other ways to say it. */
  readonly also: readonly string[];
}

const kind = (family: Family, length: KindEntry['length'], ...also: string[]): KindEntry => ({
  family,
  length,
  also,
});

const TABLE = {
  bolt: kind('bolt', 'must', 'hex bolt', 'hex head bolt', 'hex cap screw', 'cap screw', 'bolts'),
  screw: kind('bolt', 'must', 'set screw', 'hex screw', 'screws'),
  'countersunk screw': kind('bolt', 'must', 'csk screw', 'flat head screw'),
  'shoulder bolt': kind('bolt', 'may'),
  'T-bolt': kind('bolt', 'must', 't bolt'),
  'U-bolt': kind('bolt', 'may', 'u bolt'),
  'banjo bolt': kind('bolt', 'may'),
  'head bolt': kind('bolt', 'must', 'cylinder head bolt'),
  stud: kind('bolt', 'must'),

  nut: kind('nut', 'never', 'hex nut', 'plain nut', 'nuts'),
  'insert lock nut': kind(
    'nut',
    'never',
    'nylon insert lock nut',
    'nylon lock nut',
    'nyloc nut',
    'nyloc',
    'lock nut',
  ),
  'all-metal lock nut': kind('nut', 'never', 'all metal lock nut', 'metal lock nut', 'prevailing torque nut'),
  'castle nut': kind('nut', 'never', 'slotted nut', 'castellated nut'),
  'thin nut': kind('nut', 'never', 'jam nut'),
  'high nut': kind('nut', 'never', 'tall nut'),
  'wheel nut': kind('nut', 'never', 'lug nut'),
  'tube nut': kind('tube nut', 'never', 'flare nut', 'brake nut', 'pipe nut'),

  washer: kind('washer', 'never', 'flat washer', 'plain washer', 'washers'),
  'SAE washer': kind('washer', 'never', 'narrow washer'),
  'USS washer': kind('washer', 'never', 'wide washer'),
  'hardened washer': kind('washer', 'never'),
  'penny washer': kind('washer', 'never', 'fender washer', 'mudguard washer'),
  'spring washer': kind('washer', 'never', 'split lock washer', 'split washer', 'lock washer'),
  'toothed washer': kind('washer', 'never', 'star washer', 'shakeproof washer'),
  'copper washer': kind('washer', 'never', 'copper crush washer', 'crush washer'),

  'split pin': kind('pin', 'must', 'cotter pin', 'cotter'),
} satisfies Readonly<Record<string, KindEntry>>;

/** As it is written; `readKind` takes the other ways to say it too. */
export type Kind = keyof typeof TABLE;
export const KINDS = Object.keys(TABLE) as readonly Kind[];

export const familyOf = (of: Kind): Family => TABLE[of].family;
export const asksLength = (of: Kind): 'must' | 'may' | 'never' => TABLE[of].length;

/** Nuts that brake themselves: their drag is measured and added. */
export const isLockNut = (of: Kind): boolean => of === 'insert lock nut' || of === 'all-metal lock nut';

const FINISH_TABLE = {
  'yellow zinc': ['zinc yellow', 'yellow passivated'],
  zinc: ['zinc plated', 'zinc-plated', 'plated', 'zp', 'bzp'],
  black: ['black oxide', 'blackened'],
  plain: ['self colour', 'unplated'],
  galvanised: ['galvanized', 'hdg'],
  cadmium: ['cad', 'cadmium plated'],
  phosphate: ['phosphated'],
  brass: [],
  stainless: ['stainless steel'],
} satisfies Readonly<Record<string, readonly string[]>>;

export type Finish = keyof typeof FINISH_TABLE;
export const FINISHES = Object.keys(FINISH_TABLE) as readonly Finish[];

interface Said<Word extends string> {
  readonly word: Word;
  /** The line without it. */
  readonly rest: string;
}

type Spelling<Word extends string> = readonly [pattern: RegExp, word: Word];

/** Longest first, so that `insert lock nut` is not taken for a nut; hyphen and gap are one. */
const spellings = <Word extends string>(words: readonly Word[], also: (word: Word) => readonly string[]) =>
  words
    .flatMap((word) => [word, ...also(word)].map((text): readonly [string, Word] => [text, word]))
    .sort(([a], [b]) => b.length - a.length)
    .map(([text, word]): Spelling<Word> => [
      new RegExp(`(?<![\\w-])${text.toLowerCase().replace(/[ -]/gu, '[ -]')}(?![\\w-])`, 'u'),
      word,
    ]);

const KIND_SPELLINGS = spellings(KINDS, (word) => TABLE[word].also);
const FINISH_SPELLINGS = spellings(FINISHES, (word) => FINISH_TABLE[word]);

const find = <Word extends string>(line: string, table: readonly Spelling<Word>[]): Said<Word> | null => {
  for (const [pattern, word] of table)
    if (pattern.test(line)) return { word, rest: line.replace(pattern, ' ') };
  return null;
};

/** What kind of thing a line in small letters says it is, wherever in the line. */
export const readKind = (line: string): Said<Kind> | null => find(line, KIND_SPELLINGS);
export const readFinish = (line: string): Said<Finish> | null => find(line, FINISH_SPELLINGS);
