/**
 * The short texts of a plan, each read into data. A parser answers null for what it can't read;
 * `plan/check.ts` turns that into a problem with its place and what would be right.
 */
import type { Key, Reuse } from '@/lib/domain/base/vocabulary';

/** `J-110`, `J-110@L`, `J-110@*`: position null = by the rule of positions, `*` = all. */
export interface Reference {
  readonly key: Key;
  readonly position: string | null;
}

export type Need =
  | { readonly kind: 'bare'; readonly ref: Reference }
  | { readonly kind: 'joint'; readonly ref: Reference; readonly level: 'snug' | 'final' | 'verified' }
  | { readonly kind: 'stopgap-out'; readonly ref: Reference }
  | { readonly kind: 'condition'; readonly condition: Key; readonly value: boolean }
  | { readonly kind: 'wait'; readonly ref: Reference }
  | { readonly kind: 'part'; readonly part: Key }
  | { readonly kind: 'photo'; readonly ref: Reference; readonly slot: string };

export const BODY_VERBS = [
  'snug',
  'final',
  'retorque',
  'recheck',
  'open',
  'check',
  'place',
  'out',
  'set',
  'clear',
  'fit',
  'photo',
] as const;
export type BodyVerb = (typeof BODY_VERBS)[number];

/** One line of what finishing an operation means. */
export interface BodyLine {
  readonly verb: BodyVerb;
  readonly ref: Reference;
}

export type WhenExpression =
  | { readonly kind: 'is'; readonly option: Key; readonly choice: string }
  | { readonly kind: 'not'; readonly of: WhenExpression }
  | { readonly kind: 'and' | 'or'; readonly left: WhenExpression; readonly right: WhenExpression };

const KEY = '[A-Za-z][A-Za-z0-9._-]*';
const REFERENCE = new RegExp(`^(${KEY})(?:@(\\*|[A-Za-z0-9]+))?$`);
export const KEY_PATTERN = new RegExp(`^${KEY}$`);

export const parseReference = (text: string): Reference | null => {
  const match = REFERENCE.exec(text.trim());
  return match?.[1] === undefined ? null : { key: match[1], position: match[2] ?? null };
};

/** Reads one need; what a bare key stands for (operation or check) is settled against the plan. */
export const parseNeed = (text: string): Need | null => {
  const trimmed = text.trim();
  const condition = /^([+-])\s*(.+)$/.exec(trimmed);
  if (condition?.[2] !== undefined) {
    return KEY_PATTERN.test(condition[2])
      ? { kind: 'condition', condition: condition[2], value: condition[1] === '+' }
      : null;
  }
  const words = trimmed.split(/\s+/);
  const [first = '', second = ''] = words;
  if (words.length > 2) return null;
  if (words.length === 1) return withReference(first, (ref) => ({ kind: 'bare', ref }));
  if (second === 'snug' || second === 'final' || second === 'verified')
    return withReference(first, (ref) => ({ kind: 'joint', ref, level: second }));
  if (second === 'out') return withReference(first, (ref) => ({ kind: 'stopgap-out', ref }));
  if (first === 'wait') return withReference(second, (ref) => ({ kind: 'wait', ref }));
  if (first === 'part') return KEY_PATTERN.test(second) ? { kind: 'part', part: second } : null;
  if (first === 'photo') {
    const [owner = '', slot = ''] = second.split('/');
    return slot === '' ? null : withReference(owner, (ref) => ({ kind: 'photo', ref, slot }));
  }
  return null;
};

const withReference = (text: string, make: (ref: Reference) => Need): Need | null => {
  const ref = parseReference(text);
  return ref === null ? null : make(ref);
};

export const parseBodyLine = (text: string): BodyLine | null => {
  const [verb = '', target = '', ...rest] = text.trim().split(/\s+/);
  const known = BODY_VERBS.find((each) => each === verb);
  const ref = parseReference(target);
  return known === undefined || ref === null || rest.length > 0 ? null : { verb: known, ref };
};

const WHEN_TOKEN = new RegExp(`\\s*(\\(|\\)|and\\b|or\\b|not\\b|(${KEY})=([A-Za-z0-9._-]+))\\s*`, 'y');

/** `heater=none and not (axle=rebuilt or tank=lined)`; `and` binds closer than `or`. */
export const parseWhen = (text: string): WhenExpression | null => {
  const tokens: string[] = [];
  WHEN_TOKEN.lastIndex = 0;
  while (WHEN_TOKEN.lastIndex < text.length) {
    const match = WHEN_TOKEN.exec(text);
    if (match?.[1] === undefined) return null;
    tokens.push(match[1]);
  }
  let at = 0;
  const either = (): WhenExpression | null => {
    let left = both();
    while (left !== null && tokens[at] === 'or') {
      at += 1;
      const right = both();
      left = right === null ? null : { kind: 'or', left, right };
    }
    return left;
  };
  const both = (): WhenExpression | null => {
    let left = single();
    while (left !== null && tokens[at] === 'and') {
      at += 1;
      const right = single();
      left = right === null ? null : { kind: 'and', left, right };
    }
    return left;
  };
  const single = (): WhenExpression | null => {
    const token = tokens[at];
    at += 1;
    if (token === undefined) return null;
    if (token === 'not') {
      const of = single();
      return of === null ? null : { kind: 'not', of };
    }
    if (token === '(') {
      const inner = either();
      if (tokens[at] !== ')') return null;
      at += 1;
      return inner;
    }
    const [option = '', choice] = token.split('=');
    return choice === undefined ? null : { kind: 'is', option, choice };
  };
  const expression = either();
  return at === tokens.length ? expression : null;
};

/** The options that an expression asks about, in order of mention. */
export const optionsOf = (expression: WhenExpression): readonly Key[] => {
  switch (expression.kind) {
    case 'is':
      return [expression.option];
    case 'not':
      return optionsOf(expression.of);
    case 'and':
    case 'or':
      return [...optionsOf(expression.left), ...optionsOf(expression.right)];
  }
};

const DURATION = /^(\d+(?:\.\d+)?)\s*(s|min|h|d)$/;
const MILLISECONDS: Readonly<Record<string, number>> = { s: 1000, min: 60_000, h: 3_600_000, d: 86_400_000 };

/** `16 h`, `10 min`, `0.5 h` → milliseconds. Cure and fire watch count calendar time. */
export const parseDuration = (text: string): number | null => {
  const match = DURATION.exec(text.trim());
  const unit = MILLISECONDS[match?.[2] ?? ''];
  return match === null || unit === undefined ? null : Math.round(Number(match[1]) * unit);
};

export const parseReuse = (text: string): Reuse | null => {
  if (text === 'once fitted') return { rule: 'once-fitted' };
  if (text === 'once final') return { rule: 'once-final' };
  if (text === 'always') return { rule: 'always' };
  const times = /^(\d+) times$/.exec(text);
  return times === null || Number(times[1]) < 1 ? null : { rule: 'times', times: Number(times[1]) };
};
