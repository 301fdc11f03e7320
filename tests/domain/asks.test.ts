import { describe, expect, test } from 'vitest';
import { answerText, asksOn, askText } from '@/lib/domain/asks';
import type { NoteRow } from '@/lib/domain/car/rows';

const notes = (...rows: readonly (readonly [of: string, text: string, by: string, at: string])[]) => ({
  notes: Object.fromEntries(
    rows.map(([of, text, by, at], index): [string, NoteRow] => [`c-${String(index)}`, { of, text, by, at }]),
  ),
});

describe('given remarks on a car', () => {
  test('then only questions are asked, and stand without the word that marks them', () => {
    const car = notes(
      ['AX-010', askText('which shim?'), 'tom', '2026-03-02T08:00'],
      ['AX-010', 'shims are in bin 4', 'vera', '2026-03-02T08:01'],
    );
    expect(asksOn(car)).toEqual([
      { of: 'AX-010', text: 'which shim?', by: 'tom', at: '2026-03-02T08:00', answer: null },
    ]);
  });

  test('then an answer is for all that was asked before it about the same thing, and for nothing else', () => {
    const car = notes(
      ['AX-010', answerText('the red one'), 'leo', '2026-03-02T09:00'],
      ['AX-010', askText('which shim?'), 'tom', '2026-03-02T08:00'],
      ['AX-010', askText('how many?'), 'tess', '2026-03-02T08:30'],
      ['AX-020', askText('which hose?'), 'tom', '2026-03-02T08:40'],
      ['AX-010', askText('and left?'), 'tom', '2026-03-02T09:30'],
    );
    expect(asksOn(car).map(({ of, text, answer }) => [of, text, answer?.text ?? null])).toEqual([
      ['AX-010', 'which shim?', 'the red one'],
      ['AX-010', 'how many?', 'the red one'],
      ['AX-020', 'which hose?', null],
      ['AX-010', 'and left?', null],
    ]);
    expect(asksOn(car)[0]?.answer).toMatchObject({ by: 'leo', at: '2026-03-02T09:00' });
  });

  test('then the first answer after a question is its own, whatever was said later', () => {
    const car = notes(
      ['AX-010', askText('which shim?'), 'tom', '2026-03-02T08:00'],
      ['AX-010', answerText('the red one'), 'leo', '2026-03-02T09:00'],
      ['AX-010', answerText('no, the blue one'), 'leo', '2026-03-02T09:05'],
    );
    expect(asksOn(car).map(({ answer }) => answer?.text)).toEqual(['the red one']);
  });

  test('then rows in any order give the same: a store keeps none', () => {
    const rows = [
      ['A', askText('one'), 'tom', '2026-03-02T08:00'],
      ['A', answerText('yes'), 'leo', '2026-03-02T08:10'],
      ['B', askText('two'), 'tom', '2026-03-02T08:05'],
    ] as const;
    expect(asksOn(notes(...[...rows].reverse()))).toEqual(asksOn(notes(...rows)));
  });
});
