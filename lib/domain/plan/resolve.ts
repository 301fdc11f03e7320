/** Which elements of a plan a car has, by the options chosen for it. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { parseWhen } from './notation';
import type { WhenExpression } from './notation';

/** On the car, not on it, or hanging on options that nobody has chosen yet. */
export type Applies = { readonly on: boolean } | { readonly undecided: readonly Key[] };

const YES: Applies = { on: true };
const NO: Applies = { on: false };

/** Does an element with this `when` belong to a car with these options? An unreadable text counts as always. */
export const applies = (when: string | undefined, chosen: Readonly<Record<Key, string>>): Applies => {
  const expression = when === undefined ? null : parseWhen(when);
  return expression === null ? YES : judge(expression, chosen);
};

const judge = (expression: WhenExpression, chosen: Readonly<Record<Key, string>>): Applies => {
  switch (expression.kind) {
    case 'is': {
      const choice = chosen[expression.option];
      if (choice === undefined) return { undecided: [expression.option] };
      return choice === expression.choice ? YES : NO;
    }
    case 'not': {
      const inner = judge(expression.of, chosen);
      return 'undecided' in inner ? inner : { on: !inner.on };
    }
    case 'and':
    case 'or': {
      // A side that settles the matter alone wins over one that is still undecided.
      const settles = expression.kind === 'or';
      const left = judge(expression.left, chosen);
      const right = judge(expression.right, chosen);
      if ('on' in left && left.on === settles) return left;
      if ('on' in right && right.on === settles) return right;
      if ('on' in left && 'on' in right) return left;
      return {
        undecided: [
          ...('undecided' in left ? left.undecided : []),
          ...('undecided' in right ? right.undecided : []),
        ],
      };
    }
  }
};
