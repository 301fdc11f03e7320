import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { Sending } from './use-sending';

interface AnswerLinesProps {
  readonly sending: Sending;
  /** Said when it was accepted. */
  readonly done: string;
}

/** What came of it, below the form: done, or everything that stands against it. */
export function AnswerLines({ sending: { answer, isBusy, again }, done }: AnswerLinesProps) {
  if (answer === null) return null;
  if (answer.outcome === 'accepted')
    return (
      <p className="said">
        <Glyph name="passed" /> <span>{done}</span>
      </p>
    );
  const lines =
    answer.outcome === 'refused'
      ? answer.refusals.map(({ sentence }) => sentence)
      : answer.outcome === 'bad-input'
        ? answer.fields.map(({ says }) => says)
        : [answer.says];
  return (
    <div className="said bad" role="alert">
      <Glyph name={answer.outcome === 'unknown' ? 'offline' : 'failed'} />
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {answer.outcome === 'unknown' ? (
        <Button onClick={() => void again()} held={isBusy}>
          Ask again
        </Button>
      ) : null}
      {answer.outcome === 'not-signed-in' ? (
        <a className="btn" href="/sign-in">
          Sign in
        </a>
      ) : null}
    </div>
  );
}
