/** Server-sent events, as far as ours go: messages in `data:` lines, comments that only say that the line holds. */
import type { LiveMessage } from '@/lib/wire/live';

/** Takes the text as it comes, in whatever pieces, and gives the messages that are whole. */
export const messageReader = (): ((piece: string) => readonly LiveMessage[]) => {
  let rest = '';
  return (piece) => {
    const blocks = (rest + piece).split('\n\n');
    rest = blocks.pop() ?? '';
    return blocks.flatMap((block) => {
      const data = block
        .split('\n')
        .filter((line) => line.startsWith('data: '))
        .map((line) => line.slice(6))
        .join('\n');
      // From our own server, over the same origin.
      return data === '' ? [] : [JSON.parse(data) as LiveMessage];
    });
  };
};
