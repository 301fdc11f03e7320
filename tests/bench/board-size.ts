/**
 * How much script the track board loads at first, gzip: the page's own script tags, without the polyfill that only old
 * browsers take. `tsx tests/bench/board-size.ts ORIGIN [NAME PASSWORD]` asks a running shop; the demo's lead by default.
 */
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { Client } from '@/tests/e2e/doors-client';

export interface ScriptSize {
  readonly file: string;
  readonly bytes: number;
}

/** What the board may load, from the list of figures that the shop is held to. */
export const MOST_BYTES = 200_000;

/** Each script of the page at this path as the signed-in browser gets it. */
export const scriptSizes = async (client: Client, path = '/board'): Promise<readonly ScriptSize[]> => {
  const page = await client.ask(path);
  if (page.status !== 200) throw new Error(`${path} answered ${String(page.status)}`);
  const sources = [...page.text.matchAll(/<script\b([^>]*)>/g)].flatMap(([, attributes = '']) => {
    const source = /\bsrc="([^"]+)"/.exec(attributes)?.[1];
    return source === undefined || /\bnomodule\b/i.test(attributes) ? [] : [source.replaceAll('&amp;', '&')];
  });
  return Promise.all(
    [...new Set(sources)].map(async (source) => ({
      file: source.split('/').at(-1) ?? source,
      bytes: gzipSync((await client.ask(source)).text).length,
    })),
  );
};

export const totalOf = (sizes: readonly ScriptSize[]): number =>
  sizes.reduce((sum, { bytes }) => sum + bytes, 0);

const print = async (origin: string, name: string, password: string): Promise<void> => {
  const client = new Client(origin);
  const at = await client.signIn('desk', name, password);
  if (at !== '/board') throw new Error(`${name} was not signed in: ${at}`);
  const sizes = await scriptSizes(client);
  for (const { file, bytes } of sizes) console.log(`${String(bytes).padStart(8)}  ${file}`);
  console.log(
    `${String(totalOf(sizes)).padStart(8)}  track board, gzip, first load; at most ${String(MOST_BYTES)}`,
  );
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const lead = DEMO_SIGN_INS.find(({ roles }) => roles.includes('lead'));
  const [origin = 'http://127.0.0.1:3000', name = lead?.name ?? '', password = lead?.password ?? ''] =
    process.argv.slice(2);
  await print(origin, name, password);
}
