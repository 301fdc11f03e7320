/** Pieces and the lengths they are cut from: readable, not too long, and in step with what the operation says it uses up. */
import { ZERO, add, compare, exact, multiply, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import { MOST_PIECES, longestRoom, parseLength, parsePieces, readCut } from './cut';
import type { CutTerms, PieceText } from './cut';
import type { ItemEntry, OperationEntry, PlanDocument } from './document';
import { problem } from './problem';
import type { Problem } from './problem';

export const checkCutting = (document: PlanDocument): readonly Problem[] => {
  const items = new Map(Object.entries(document.items ?? {}));
  return [
    ...[...items].flatMap(([key, item]) => checkTerms(key, item)),
    ...Object.entries(document.operations ?? {}).flatMap(([key, operation]) =>
      Object.entries(operation.pieces ?? {}).flatMap(([item, pieces]) => [
        ...unreadable(key, item, pieces),
        ...checkPieces(key, operation, item, items.get(item), pieces),
      ]),
    ),
  ];
};

const checkTerms = (key: Key, { cut }: ItemEntry): readonly Problem[] => {
  if (cut === undefined) return [];
  const { lengths, kerf, ends, keep } = cut;
  const texts: readonly (readonly [string | undefined, ...(string | number)[]])[] = [
    ...lengths.map((text, at) => [text, 'lengths', at] as const),
    [kerf, 'kerf'],
    [ends, 'ends'],
    [keep, 'keep'],
  ];
  return texts.flatMap(([text, ...path]) =>
    text === undefined || parseLength(text) !== null
      ? []
      : [problem('length-unreadable', ['items', key, 'cut', ...path], { text })],
  );
};

const unreadable = (key: Key, item: Key, pieces: Readonly<Record<string, string>>): readonly Problem[] =>
  Object.entries(pieces).flatMap(([name, text]) =>
    parsePieces(text) === null
      ? [
          problem('pieces-unreadable', ['operations', key, 'pieces', item, name], {
            text,
            most: String(MOST_PIECES),
          }),
        ]
      : [],
  );

/** An item that the plan does not have is told as a name that leads nowhere. */
const checkPieces = (
  key: Key,
  operation: OperationEntry,
  item: Key,
  entry: ItemEntry | undefined,
  pieces: Readonly<Record<string, string>>,
): readonly Problem[] => {
  if (entry === undefined) return [];
  const path = ['operations', key, 'pieces', item];
  if (entry.cut === undefined) return [problem('pieces-without-lengths', path, { item }, { onKey: true })];
  const terms = readCut(entry.cut);
  const read = Object.entries(pieces).map(([name, text]) => ({ name, piece: parsePieces(text) }));
  const sound = read.flatMap(({ name, piece }) => (piece === null ? [] : [{ name, ...piece }]));
  if (terms === null || sound.length < read.length || sound.length === 0) return [];
  const room = longestRoom(terms);
  const long = sound.filter(({ length }) => compare(length, room) > 0);
  return [
    ...long.map(({ name, length }) =>
      problem('piece-too-long', [...path, name], {
        item,
        length: toDecimalText(length, 1),
        room: toDecimalText(room, 1),
      }),
    ),
    ...checkQuantity(key, operation, item, entry, terms, sound),
  ];
};

const checkQuantity = (
  key: Key,
  { consumables = {} }: OperationEntry,
  item: Key,
  { unit = 'pc' }: ItemEntry,
  terms: CutTerms,
  pieces: readonly PieceText[],
): readonly Problem[] => {
  const sum = pieces.reduce((all, { count, length }) => add(all, multiply(exact(count), length)), ZERO);
  const metres = toDecimalText(multiply(sum, exact(1, 1000)), 2);
  const said = new Map(Object.entries(consumables)).get(item);
  if (said === undefined) {
    const details = { item, operation: key, sum: metres };
    return [
      problem('pieces-without-quantity', ['operations', key, 'pieces', item], details, { onKey: true }),
    ];
  }
  const text = typeof said === 'number' || /^[\d.,\s]+$/u.test(said) ? `${String(said)} ${unit}` : said;
  const quantity = parseLength(text);
  if (quantity === null || isExpected(quantity, sum, terms.kerf, pieces)) return [];
  const details = { item, operation: key, sum: metres, quantity: text };
  return [problem('pieces-against-quantity', ['operations', key, 'consumables', item], details)];
};

/**
 * What a reader expects beside pieces of this sum: no less than the pieces themselves, rounded; no more than them with their
 * cuts and a tenth, for bends and ends.
 */
const isExpected = (quantity: Exact, sum: Exact, kerf: Exact, pieces: readonly PieceText[]): boolean => {
  const cuts = multiply(kerf, exact(pieces.reduce((all, { count }) => all + count, 0)));
  const least = multiply(sum, exact(99, 100));
  const most = multiply(add(sum, cuts), exact(11, 10));
  return compare(quantity, least) >= 0 && compare(quantity, most) <= 0;
};
