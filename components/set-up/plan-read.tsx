import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { GlyphName } from '@/components/ui/glyph';
import type { PlanAnswer, PlanLook } from '@/lib/wire/set-up';

type Read = Extract<PlanAnswer, { outcome: 'read' }>;
type Problem = Read['problems'][number];

/** Enough to know the line again. */
const LONGEST_LINE = 100;

const RANKS: readonly {
  readonly rank: Problem['rank'];
  readonly many: string;
  readonly none: GlyphName;
  readonly some: GlyphName;
  readonly means: string;
}[] = [
  { rank: 'error', many: 'errors', none: 'passed', some: 'error', means: 'it can’t be finished like this' },
  { rank: 'gap', many: 'gaps', none: 'gap', some: 'gap', means: 'will hold something back later' },
  { rank: 'hint', many: 'hints', none: 'hint', some: 'hint', means: 'smaller thoughts' },
];

interface PlanReadProps {
  readonly read: Read;
  /** What was read, to show the lines that are spoken of. */
  readonly text: string;
  readonly isBusy: boolean;
  readonly onRelease: () => void;
}

/** What was found in the text: how big, and each problem with its line. */
export function PlanRead({ read: { look, problems }, text, isBusy, onRelease }: PlanReadProps) {
  const lines = text.split(/\r?\n/);
  const isSound = look !== null && problems.every(({ rank }) => rank !== 'error');
  return (
    <div className="plan-read" role="status">
      {look === null ? null : <Counts look={look} />}
      <ul className="found">
        {RANKS.map(({ rank, many, none, some, means }) => {
          const found = problems.filter((problem) => problem.rank === rank);
          return (
            <li key={rank}>
              <Glyph name={found.length === 0 ? none : some} size={32} />
              <b className="num">{found.length}</b>
              <div>
                <b>{found.length === 1 ? rank : many}</b>
                <span className="small dim">{found.length === 0 ? 'none' : means}</span>
                {found.length === 0 ? null : (
                  <Problems problems={found} lines={lines} isOpen={rank === 'error'} />
                )}
              </div>
            </li>
          );
        })}
      </ul>
      {isSound ? (
        <div className="signbar">
          <span className="t">
            <b>
              Take it as {look.model}, revision {look.revision}.
            </b>
            <span className="small dim">It is frozen under its own hash, and every car names it.</span>
          </span>
          <Button kind="main" held={isBusy} onClick={onRelease}>
            Use this plan
          </Button>
        </div>
      ) : null}
    </div>
  );
}

function Counts({ look }: { readonly look: PlanLook }) {
  const { stages, operations, joints, checks, items } = look;
  return (
    <dl className="count">
      {Object.entries({ stages, operations, joints, checks, items }).map(([what, count]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{count}</dd>
        </div>
      ))}
    </dl>
  );
}

interface ProblemsProps {
  readonly problems: readonly Problem[];
  readonly lines: readonly string[];
  readonly isOpen: boolean;
}

function Problems({ problems, lines, isOpen }: ProblemsProps) {
  return (
    <details open={isOpen}>
      <summary>See them, by line</summary>
      <ol className="problems">
        {problems.map(({ line, column, code, sentence, path }) => (
          <li key={`${String(line)} ${String(column)} ${code} ${path}`}>
            <span className="num">
              <span className="vh">line </span>
              {line}:{column}
            </span>
            <span>
              {sentence}
              <code>{lines[line - 1]?.trim().slice(0, LONGEST_LINE)}</code>
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}
