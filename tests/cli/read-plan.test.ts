import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { planJsonSchema, planSchema } from '@/lib/wire/plan-schema';
import { readPlan } from '@/lib/wire/read-plan';

const short = `plan: Corbel 54
revision: "1"
stages:
  S1: { name: Frame }
  S2: { name: Axle }
operations:
  FR-010: { name: Weld the brackets, stage: S1 }
  FR-020: { name: Paint, stage: S1, needs: [FR-010], wait: 16 h }
  AX-010: { name: Hang the axle, stage: S2, needs: [wait FR-020] }
  AX-020: { name: Fit the brakes, stage: S2, needs: [AX-010] }
`;

/** The short plan with more lines; the first of them is line 11. */
const more = (...lines: string[]): string => short + lines.map((line) => `${line}\n`).join('');
/** In these texts a bar stands before every place at which a problem is to be told. */
const clean = (text: string): string => text.replaceAll('¦', '');
const told = (text: string): string[] =>
  readPlan(clean(text)).problems.map(({ line, column, code, path }) => `${line}:${column} ${code} ${path}`);
const placed = (text: string, wanted: readonly string[]): string[] => {
  const places = text
    .split('\n')
    .flatMap((row, at) =>
      [...row.matchAll(/¦/g)].map(({ index }, before) => `${at + 1}:${index - before + 1}`),
    );
  expect(places).toHaveLength(wanted.length);
  return wanted.map((each, at) => `${places[at]} ${each}`);
};
const sentences = (text: string): string =>
  readPlan(clean(text))
    .problems.map(({ sentence }) => sentence)
    .join('\n');

test('a plan of ten lines, stages and operations only, is read without a problem', () => {
  const { document, problems } = readPlan(short);
  expect(problems).toEqual([]);
  expect(Object.keys(document?.operations ?? {})).toEqual(['FR-010', 'FR-020', 'AX-010', 'AX-020']);
});

describe('the place of a problem', () => {
  const joint = '  ¦J-1: { name: Axle, fasteners: 4, method: click, torque: ¦no value published }';
  test.each<[string, string, string[]]>([
    [
      'a need in a flow list',
      short.replace('[AX-010]', '[FR-010, ¦AX-011]'),
      ['reference-dangling operations.AX-020.needs[1]'],
    ],
    [
      'a need in a block list',
      more(
        '  AX-030:',
        '    name: Bleed',
        '    stage: S2',
        '    needs:',
        '      - AX-020',
        '      - ¦AX-020 tight',
      ),
      ['need-unreadable operations.AX-030.needs[1]'],
    ],
    [
      'an item of hardware',
      more('  AX-030: { name: Bleed, stage: S2, hardware: { ¦BOLT: 4 } }'),
      ['reference-dangling operations.AX-030.hardware.BOLT'],
    ],
    [
      'a value',
      more('joints:', joint),
      ['joint-not-worked joints.J-1', 'no-value-not-firm joints.J-1.torque'],
    ],
    [
      'a missing field of a block, at its key',
      more('joints:', '  ¦¦J-1:', '    name: Axle', '    fasteners: 4', '    method: click'),
      ['torque-missing joints.J-1.torque', 'joint-not-worked joints.J-1'],
    ],
    ['a key', more('parts:', '  ¦S1: { name: Stub }'), ['key-used-twice parts.S1']],
    [
      'a list',
      more(
        'joints:',
        '  J-1: { name: Axle, fasteners: 2, method: firm, torque: no value published, pattern: ¦[1, 1] }',
      ).replace('[AX-010]', '[AX-010], body: [final J-1]'),
      ['pattern-not-each-once joints.J-1.pattern'],
    ],
    [
      'a text behind an alias',
      more(
        '  AX-030: { name: Bleed, stage: S2, needs: &n [¦AX-99] }',
        '  AX-040: { name: Bleed, stage: S2, needs: ¦*n }',
      ),
      ['reference-dangling operations.AX-030.needs[0]', 'reference-dangling operations.AX-040.needs[0]'],
    ],
    [
      'windows line ends',
      short.replaceAll('\n', '\r\n').replace('[AX-010]', '[¦AX-011]'),
      ['reference-dangling operations.AX-020.needs[0]'],
    ],
  ])('%s', (_, text, wanted) => {
    const { document } = readPlan(clean(text));
    expect(told(text)).toEqual(placed(text, wanted));
    expect(document).not.toBeNull();
  });
});

describe('a wrong shape', () => {
  test.each<[string, string, string[], RegExp]>([
    [
      'an unknown field',
      short.replace('wait: 16 h', '¦waits: 16 h'),
      ['unknown-field operations.FR-020.waits'],
      /Did you mean “wait”\?/,
    ],
    ['an unknown section', more('¦joint: {}'), ['unknown-field joint'], /Did you mean “joints”\?/],
    [
      'an unknown field of a hardware line',
      more('  AX-030: { name: Bleed, stage: S2, hardware: { BOLT: { quantity: 4, ¦pre: joint } } }'),
      ['unknown-field operations.AX-030.hardware.BOLT.pre'],
      /“per”/,
    ],
    [
      'a missing field',
      more('  ¦AX-030: { stage: S2 }'),
      ['missing-field operations.AX-030.name'],
      /“name” is missing/,
    ],
    ['a missing section', '¦plan: Corbel\nrevision: "1"\n', ['missing-field stages'], /“stages” is missing/],
    [
      'a missing choice from a list of words',
      more('checks:', '  ¦K-1: { name: Gap }'),
      ['missing-field checks.K-1.kind'],
      /one of visual, measured, functional/,
    ],
    [
      'a wrong word',
      more('checks:', '  K-1: { name: Gap, kind: ¦visaul }'),
      ['wrong-word checks.K-1.kind'],
      /Did you mean “visual”\?/,
    ],
    [
      'a number for a text',
      short.replace('revision: "1"', 'revision: ¦8'),
      ['not-a-text revision'],
      /Put it in quotes: revision: "8"/,
    ],
    [
      'a number as it is typed',
      more('joints:', '  J-1: { name: A, fasteners: 1, method: firm, grade: ¦8.80, length: ¦40 }'),
      ['not-a-text joints.J-1.grade', 'not-a-text joints.J-1.length'],
      /grade: "8\.80"[^]*length: "40"/,
    ],
    [
      'a number in a list',
      short.replace('[AX-010]', '[¦10]'),
      ['not-a-text operations.AX-020.needs[0]'],
      /Put it in quotes: "10"/,
    ],
    ['a truth for a text', short.replace('Corbel 54', '¦true'), ['not-a-text plan'], /read as a boolean/],
    [
      'an empty field',
      short.replace('wait: 16 h', '¦wait: '),
      ['wrong-value operations.FR-020.wait'],
      /“wait” is empty/,
    ],
    [
      'a text for a list',
      short.replace('[AX-010]', '¦AX-010'),
      ['wrong-value operations.AX-020.needs'],
      /can’t be a text\. Write a list/,
    ],
    [
      'a word for a repeat',
      more('  AX-030: { name: Bleed, stage: S2, repeat: ¦side }'),
      ['wrong-word operations.AX-030.repeat'],
      /Did you mean “sides”\?/,
    ],
    [
      'a truth for a repeat',
      more('  AX-030: { name: Bleed, stage: S2, repeat: ¦true }'),
      ['wrong-value operations.AX-030.repeat'],
      /a number/,
    ],
    [
      'a number out of range',
      more('joints:', '  J-1: { name: A, fasteners: ¦0, method: firm }'),
      ['wrong-value joints.J-1.fasteners'],
      /fasteners/,
    ],
    ['a list for the whole', '¦- plan: Corbel\n', ['wrong-value '], /./],
  ])('%s', (_, text, wanted, sentence) => {
    expect(readPlan(clean(text)).document).toBeNull();
    expect(told(text)).toEqual(placed(text, wanted));
    expect(sentences(text)).toMatch(sentence);
  });

  test('equal keys, wrong shapes and unreadable texts are told together, in the order of the file', () => {
    const text = more(
      '  ¦AX-030: { name: Bleed, ¦stages: S2 }',
      '  ¦FR-010: { name: Again, stage: S1 }',
      'parts:',
      '  P-1: { name: Floor, outside: ¦long }',
      '  ¦P-1: { name: Roof }',
    );
    expect(told(text)).toEqual(
      placed(text, [
        'missing-field operations.AX-030.stage',
        'unknown-field operations.AX-030.stages',
        'duplicate-key operations.FR-010',
        // The first of two is read on with, so that its own faults are told.
        'duration-unreadable parts.P-1.outside',
        'duplicate-key parts.P-1',
      ]),
    );
    expect(sentences(text)).toContain('the first is on line 7');
  });

  test('a text that can’t be read is told beside a wrong shape elsewhere', () => {
    const text = more('  AX-030: { name: Bleed, stage: S2, who: ¦7 }')
      .replace('16 h', '¦overnight')
      .replace('"1"', '¦1');
    expect(told(text)).toEqual(
      placed(text, [
        'not-a-text revision',
        'duration-unreadable operations.FR-020.wait',
        'not-a-text operations.AX-030.who',
      ]),
    );
  });
});

describe('a text that is no plan', () => {
  test.each<[string, string, string[]]>([
    ['nothing', '¦', ['empty ']],
    ['only a remark', '¦# soon\n', ['empty ']],
    ['a bracket left open', short.replace('[AX-010] }', '[AX-010 ¦}¦'), ['yaml ', 'yaml ']],
    ['a tab for an indent', 'plan: A\nstages:\n¦\tS1: {}\n', ['yaml ']],
    ['two documents', `${short}¦---\nplan: B\n`, ['yaml ']],
    ['a tag that means nothing here', short.replace('Corbel 54', '¦!car Corbel'), ['yaml ']],
    [
      'the prototype as a key',
      more('  ¦__proto__: { name: A, stage: S1 }'),
      ['forbidden-key operations.__proto__'],
    ],
    ['a list as a key', more('  ¦¦[a]: { name: A, stage: S1 }'), ['yaml ', 'forbidden-key operations.']],
    ['an alias of nothing', '¦' + short.replace('[AX-010]', '*no'), ['too-many-aliases ']],
    ['brackets without end', `¦${'['.repeat(100_000)}`, ['too-deep ']],
    ['a text over 1 MB', `¦${'#'.repeat(1_000_001)}`, ['too-large ']],
    ['a text over 1 MB only in bytes', `¦# ${'±'.repeat(500_000)}`, ['too-large ']],
    ['a file that holds a NUL', '¦plan: a\0b', ['not-text ']],
    ['a picture, read as text', '¦\uFFFDPNG\r\n', ['not-text ']],
  ])('%s', (_, text, wanted) => {
    expect(readPlan(clean(text)).document).toBeNull();
    expect(told(text)).toEqual(placed(text, wanted));
  });

  test('aliases of aliases are refused before they fill the memory', () => {
    const nine = (name: string): string => `[${Array.from({ length: 9 }, () => `*${name}`).join(', ')}]`;
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'];
    const bomb = names.map((name, at) => `${name}: &${name} ${at === 0 ? '[x]' : nine(names[at - 1] ?? '')}`);
    expect(told(`${bomb.join('\n')}\n`)).toEqual(['1:1 too-many-aliases ']);
  });

  test('ten thousand equal keys are told without comparing each with all', () => {
    const text = `plan: A\n${'note: x\n'.repeat(10_000)}`;
    const started = performance.now();
    expect(readPlan(clean(text)).problems.filter(({ code }) => code === 'duplicate-key')).toHaveLength(9_999);
    expect(performance.now() - started).toBeLessThan(5_000);
  });
});

describe('the JSON Schema', () => {
  const schema = z
    .object({ $id: z.string(), title: z.string(), properties: z.record(z.string(), z.unknown()) })
    .loose()
    .parse(planJsonSchema());

  test('knows every section', () => {
    expect(Object.keys(schema.properties)).toEqual(Object.keys(planSchema.shape));
    expect(schema).toMatchObject({ additionalProperties: false, required: ['plan', 'revision', 'stages'] });
  });

  test('describes every field of every section', () => {
    const bare: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const [key, value] of Object.entries(node)) {
        if (key === 'properties')
          for (const [field, inner] of Object.entries(value as object)) {
            if (typeof Reflect.get(inner as object, 'description') !== 'string')
              bare.push(`${path}.${field}`);
          }
        walk(value, `${path}.${key}`);
      }
    };
    walk(schema, '');
    expect(bare).toEqual([]);
  });
});
