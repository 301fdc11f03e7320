/** One who watches: reads what a hub or a server sends, and waits for a message by what it must say. */
import { messageReader } from '@/lib/offline/live-messages';
import type { LiveMessage } from '@/lib/wire/live';

export class LiveReader {
  readonly messages: LiveMessage[] = [];
  /** How it ended: by the other side, or broken. */
  readonly ended: Promise<'closed' | 'broken'>;
  private readonly reader: ReadableStreamDefaultReader<Uint8Array>;
  private woken: () => void = () => undefined;
  private isOver = false;

  constructor(stream: ReadableStream<Uint8Array>) {
    this.reader = stream.getReader();
    this.ended = this.run();
  }

  private async run(): Promise<'closed' | 'broken'> {
    const read = messageReader();
    const text = new TextDecoder();
    try {
      for (let piece = await this.reader.read(); !piece.done; piece = await this.reader.read()) {
        this.messages.push(...read(text.decode(piece.value, { stream: true })));
        this.woken();
      }
      return 'closed';
    } catch {
      return 'broken';
    } finally {
      this.isOver = true;
      this.woken();
    }
  }

  /** The first message that is so, of those that came and those that come. */
  async until<Found extends LiveMessage>(isSo: (message: LiveMessage) => message is Found): Promise<Found>;
  async until(isSo: (message: LiveMessage) => boolean): Promise<LiveMessage>;
  async until(isSo: (message: LiveMessage) => boolean): Promise<LiveMessage> {
    for (;;) {
      const found = this.messages.find(isSo);
      if (found !== undefined) return found;
      if (this.isOver) throw new Error(`it ended first, after ${JSON.stringify(this.messages.slice(-3))}`);
      await new Promise<void>((resolve) => {
        this.woken = resolve;
      });
    }
  }

  async leave(): Promise<void> {
    await this.reader.cancel();
  }
}

/** News after which this stream stands at this version or a later one. */
export const tells =
  (stream: string, version: number) =>
  (message: LiveMessage): boolean =>
    message.kind === 'news' && (message.versions[stream] ?? 0) >= version;
