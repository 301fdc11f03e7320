/** The README stays true: the plan that it prints is the one that ships, and the answers that it shows are given. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PLAIN_INK } from '@/lib/cli/ink';
import { replay } from '@/lib/cli/replay';

const readme = readFileSync('README.md', 'utf8');

test('prints the example plan, whole', () => {
  expect(readme).toContain(readFileSync('seed/example-plan.yaml', 'utf8').trimEnd());
});

test('shows answers that the example day gets', () => {
  const { out } = replay('seed/example-plan.yaml', 'seed/example-day.jsonl', { zone: 'UTC' }, PLAIN_INK);
  const shown = /```text\n([\s\S]*?)```/.exec(readme)?.[1]?.trimEnd().split('\n') ?? [];
  expect(shown.length).toBeGreaterThan(5);
  for (const line of shown) expect(out.map((each) => each.trimEnd())).toContain(line.trimEnd());
});
