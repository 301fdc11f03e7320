/** Keys, options and the short texts that name nothing: each must be readable. */
import { nearestWord } from '@/lib/domain/base/nearest';
import type { Key } from '@/lib/domain/base/vocabulary';
import { MOST_REPEATS, isUsableRepeat } from './check-references';
import type { PlanDocument, Repeat } from './document';
import { KEY_PATTERN, optionsOf, parseDuration, parseReuse, parseWhen } from './notation';
import type { WhenExpression } from './notation';
import { problem } from './problem';
import type { Problem } from './problem';
import { parseLimit } from './window';

/** Sections whose keys share one namespace: a code shouted across the shop means one thing. */
const ONE_NAMESPACE = [
  'stages',
  'operations',
  'joints',
  'checks',
  'stopgaps',
  'conditions',
  'parts',
  'items',
] as const;

export const checkTexts = (document: PlanDocument): Problem[] => [
  ...(Object.keys(document.stages).length === 0 ? [problem('stages-missing', ['stages'])] : []),
  ...checkKeys(document),
  ...checkOptions(document),
  ...checkWhens(document),
  ...checkRepeats(document),
  ...checkDurations(document),
  ...Object.entries(document.items ?? {}).flatMap(([key, { reuse }]) =>
    reuse === undefined || parseReuse(reuse) !== null
      ? []
      : [problem('reuse-unreadable', ['items', key, 'reuse'], { text: reuse })],
  ),
  ...Object.entries(document.checks ?? {}).flatMap(([key, { values }]) =>
    Object.entries(values ?? {}).flatMap(([name, text]) =>
      parseLimit(text) !== null
        ? []
        : [problem('limit-unreadable', ['checks', key, 'values', name], { text })],
    ),
  ),
];

/** `constructor` and its like are found in every record of the language, whether the plan holds them or not. */
const isUsableKey = (key: Key): boolean => KEY_PATTERN.test(key) && !(key in {});

const checkKeys = (document: PlanDocument): readonly Problem[] => {
  const found: Problem[] = [];
  const owners = new Map<Key, string>();
  for (const section of [...ONE_NAMESPACE, 'options', 'cautions'] as const)
    for (const key of Object.keys(document[section] ?? {})) {
      if (!isUsableKey(key)) found.push(problem('key-unreadable', [section, key], { key }, { onKey: true }));
      if (section === 'options' || section === 'cautions') continue;
      const first = owners.get(key);
      if (first === undefined) owners.set(key, section);
      else
        found.push(
          problem('key-used-twice', [section, key], { key, first, second: section }, { onKey: true }),
        );
    }
  return found;
};

const checkOptions = (document: PlanDocument): readonly Problem[] =>
  Object.entries(document.options ?? {}).flatMap(([key, { choices, usual }]) => {
    if (usual === undefined || choices.includes(usual)) return [];
    const details = { usual, choices: choices.join(', '), nearest: nearestWord(usual, choices) ?? '' };
    return [problem('usual-not-a-choice', ['options', key, 'usual'], details)];
  });

const checkWhens = (document: PlanDocument): readonly Problem[] => {
  const options = new Map(Object.entries(document.options ?? {}));
  return (['operations', 'joints', 'checks', 'stopgaps', 'parts'] as const).flatMap((section) =>
    Object.entries<{ readonly when?: string }>(document[section] ?? {}).flatMap(([key, { when }]) => {
      if (when === undefined) return [];
      const path = [section, key, 'when'];
      const expression = parseWhen(when);
      if (expression === null) return [problem('when-unreadable', path, { text: when })];
      const unknown = [...new Set(optionsOf(expression))]
        .filter((option) => !options.has(option))
        .map((option) =>
          problem('option-unknown', path, { option, nearest: nearestWord(option, options.keys()) ?? '' }),
        );
      const wrong = choicesOf(expression).flatMap(({ option, choice }) => {
        const choices = options.get(option)?.choices;
        if (choices === undefined || choices.includes(choice)) return [];
        const details = { option, choice, choices: choices.join(', ') };
        return [problem('choice-unknown', path, { ...details, nearest: nearestWord(choice, choices) ?? '' })];
      });
      return [...unknown, ...wrong];
    }),
  );
};

type Choice = Extract<WhenExpression, { readonly kind: 'is' }>;

const choicesOf = (expression: WhenExpression): readonly Choice[] => {
  switch (expression.kind) {
    case 'is':
      return [expression];
    case 'not':
      return choicesOf(expression.of);
    case 'and':
    case 'or':
      return [...choicesOf(expression.left), ...choicesOf(expression.right)];
  }
};

const checkRepeats = (document: PlanDocument): readonly Problem[] =>
  (['operations', 'joints', 'checks'] as const).flatMap((section) =>
    Object.entries<{ readonly repeat?: Repeat }>(document[section] ?? {}).flatMap(([key, { repeat }]) =>
      isUsableRepeat(repeat)
        ? []
        : [
            problem('repeat-unusable', [section, key, 'repeat'], {
              repeat: String(repeat),
              most: String(MOST_REPEATS),
            }),
          ],
    ),
  );

const checkDurations = (document: PlanDocument): readonly Problem[] => {
  const duration = (text: string | undefined, ...path: string[]): readonly Problem[] =>
    text === undefined || parseDuration(text) !== null
      ? []
      : [problem('duration-unreadable', path, { text })];
  return [
    ...Object.entries(document.operations ?? {}).flatMap(([key, { wait, outside }]) => [
      ...duration(wait, 'operations', key, 'wait'),
      ...duration(outside, 'operations', key, 'outside'),
    ]),
    ...Object.entries(document.checks ?? {}).flatMap(([key, { holds }]) =>
      duration(holds, 'checks', key, 'holds'),
    ),
    ...Object.entries(document.parts ?? {}).flatMap(([key, { outside }]) =>
      duration(outside, 'parts', key, 'outside'),
    ),
  ];
};
