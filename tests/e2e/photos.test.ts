/** Photographs: the door they are sent to and read from, and one taken with a finding, from the file to the log. */
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Claim } from '@/lib/domain/commands';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';
import { MOST_COPY } from '@/lib/wire/photos';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { axe, comeIn, isTooWide, newPage, openBrowser, shoot, SIZES } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { drawnJpeg, sentOf, withSegment } from '@/tests/support/photos';
import { bad, line, openFold, openLine, recorded, troubleForm } from './car-page';
import { Client } from './doors-client';

const CAR = 'C54-012';

let shop: OpenedShop;
let db: Database;
let browser: Browser;

beforeAll(async () => {
  [shop, browser] = await Promise.all([openShop(), openBrowser()]);
  db = openDatabase(shop.database.url, 2);
});
afterAll(async () => {
  await db.$disconnect();
  await browser.close();
  await shop.close();
});

const give = async (actor: string, id: string, claim: Claim): Promise<void> => {
  const now = new Date().toISOString();
  const command = { id, doneAt: now, claim };
  const from = { present: null, device: null, lastContact: null, isInOrder: true };
  const answer = await runCommand(db, 'UTC', { command, actor, ...from, now });
  expect(answer.outcome).toBe('accepted');
};

const clientOf = async (person: string): Promise<Client> => {
  const client = new Client(shop.address);
  await client.signIn('bench', person, DEMO_SIGN_INS.find((each) => each.person === person)?.pin ?? '');
  return client;
};

const send = async (
  client: Client,
  body: Uint8Array | ReadableStream,
  { query = {}, headers = {} }: { query?: Record<string, string>; headers?: Record<string, string> } = {},
): Promise<Response> => {
  const sent = body instanceof Uint8Array ? sentOf(body, { car: CAR }) : sentOf(drawnJpeg(8, 8));
  const search = new URLSearchParams({ ...sent, bytes: String(sent.bytes), ...query });
  return fetch(`${shop.address}/api/photos?${search.toString()}`, {
    method: 'POST',
    body: body instanceof Uint8Array ? Buffer.from(body) : body,
    headers: {
      origin: shop.address,
      'content-type': 'image/jpeg',
      cookie: [...client.cookies].map(([name, value]) => `${name}=${value}`).join('; '),
      ...headers,
    },
    ...(body instanceof Uint8Array ? {} : { duplex: 'half' as const }),
  });
};

test('the door takes a copy from whoever is signed in, shows it to them alone, and says why not', async () => {
  const oswin = await clientOf('oswin');
  const plain = drawnJpeg(320, 200);
  const laden = withSegment(plain, 0xe1, 'Exif\0\0N 52 12.3 E 0 7.1');
  const kept = await send(oswin, laden);
  expect([kept.status, await kept.json()]).toMatchObject([200, { outcome: 'kept' }]);
  expect(kept.headers.get('cache-control')).toContain('no-store');
  const path = `/api/photos/${sentOf(laden, { car: CAR }).sha256}`;

  const shown = await oswin.ask(path);
  expect(shown.status).toBe(200);
  expect(shown.headers.get('content-type')).toBe('image/jpeg');
  expect(shown.headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
  expect(shown.headers.get('vary')?.toLowerCase()).toContain('cookie');
  expect(shown.headers.get('x-content-type-options')).toBe('nosniff');
  expect(shown.headers.get('content-security-policy')).toContain("default-src 'self'");
  expect(shown.text).not.toContain('Exif');

  const tooLong = new Uint8Array(MOST_COPY + 1);
  // Without a length of its own: it is counted as it comes.
  let pieces = 0;
  const uncounted = new ReadableStream<Uint8Array>({
    pull: (controller) => {
      // It has an end, or a server that stopped reading would leave this process to fill its memory.
      if ((pieces += 1) * 65_536 > MOST_COPY + 200_000) controller.close();
      else controller.enqueue(new Uint8Array(65_536));
    },
  });
  for (const [status, answer] of [
    [200, send(oswin, laden)],
    [413, send(oswin, tooLong)],
    [413, send(oswin, uncounted)],
    [415, send(oswin, plain, { headers: { 'content-type': 'image/png' } })],
    [400, send(oswin, plain, { query: { type: 'image/svg+xml' } })],
    [400, send(oswin, plain, { query: { bytes: '40000001' } })],
    [400, send(oswin, plain, { query: { sha256: '../board' } })],
    [400, send(oswin, Buffer.from('<svg onload="alert(1)">'))],
    [404, send(oswin, plain, { query: { car: 'C54-099' } })],
    [409, send(oswin, laden, { query: { car: 'C54-011' } })],
    [403, send(oswin, plain, { headers: { origin: 'http://evil.test' } })],
    [401, send(new Client(shop.address), plain)],
  ] as const) {
    const got = await answer;
    expect(got.status, await got.text()).toBe(status);
  }
  for (const nowhere of [`/api/photos/${'0'.repeat(64)}`, '/api/photos/..%2f..%2fetc', '/api/photos/x']) {
    const missing = await oswin.ask(nowhere);
    expect(missing.status, nowhere).toBe(404);
    expect(missing.headers.get('cache-control'), nowhere).toContain('no-store');
  }
  expect((await new Client(shop.address).ask(path)).status).toBe(401);

  // Whoever no longer works here neither sends nor sees, whatever their browser still holds.
  await give('ada', 'photo-removes', { type: 'remove-person', person: 'oswin' });
  expect((await oswin.ask(path)).status).toBe(401);
  expect((await send(oswin, drawnJpeg(16, 16))).status).toBe(401);
});

/** A photograph of 2400 × 1800, as a PNG: what stands in for a camera. */
const drawnPng = async (page: Page): Promise<Buffer> => {
  const url = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2400, 1800];
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('no canvas here');
    pen.fillStyle = '#8a8f86';
    pen.fillRect(0, 0, 2400, 1800);
    for (const [colour, radius] of [
      ['#2c332f', 760],
      ['#c9c5b4', 420],
      ['#4a201a', 180],
    ] as const) {
      pen.fillStyle = colour;
      pen.beginPath();
      pen.arc(1250, 900, radius, 0, Math.PI * 2);
      pen.fill();
    }
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
};

const looks = async (watched: Watched, name: string): Promise<void> => {
  const { page } = watched;
  for (const size of ['desk', 'tablet', 'phone'] as const) {
    await page.setViewportSize(SIZES[size]);
    expect(await isTooWide(page), `${name} ${size}`).toBe(false);
    for (const theme of ['light', 'dark'] as const) {
      if (process.env.SHOTS === undefined) continue;
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
      await shoot({ ...watched, size, theme }, name);
    }
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  await page.setViewportSize(SIZES.desk);
};

test('a finding is photographed, its words outlive a bad line, and the picture stands where it belongs', async () => {
  const watched = await newPage(browser, { address: shop.address });
  const { page } = watched;
  await comeIn(watched, 'tobit', `/cars/${CAR}`);
  await page.getByText('None yet. They are taken with a finding').waitFor();
  await bad(page, 'Finding').click();
  const finding = troubleForm(page, 'Finding');
  await finding.getByText('a place on the car').click();
  await finding.getByLabel('Where').fill('left front hub');
  await finding.getByLabel('What is wrong').fill('grease past the seal');

  // A file that is none; then a line that says no.
  const choose = finding.getByLabel('Choose a file');
  await choose.setInputFiles({
    name: 'notes.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('no picture'),
  });
  await finding.getByText('This is no JPEG, PNG or WebP. Take or choose another one.').waitFor();
  await finding.getByRole('button', { name: /^Take off/ }).click();
  const photo = await drawnPng(page);
  await page.route('**/api/photos?*', (route) =>
    route.fulfill({ status: 404, json: { outcome: 'not-found', says: 'The line is bad.' } }),
  );
  await finding
    .getByLabel('Take a photograph')
    .setInputFiles({ name: 'hub.png', mimeType: 'image/png', buffer: photo });
  await finding.getByText('The line is bad.').waitFor();
  await finding.getByRole('button', { name: 'Found', exact: true }).click();
  await finding.getByText('A photograph is not kept yet.').waitFor();
  expect(await axe(page)).toEqual([]);
  await looks(watched, 'photo-failed');
  await page.unroute('**/api/photos?*');
  await finding.getByRole('button', { name: /^Send again/ }).focus();
  await page.keyboard.press('Enter');
  await finding.getByText('Kept fingerprint').waitFor();
  expect(await finding.getByLabel('What is wrong').inputValue()).toBe('grease past the seal');
  // A reload takes the words, and not the photograph: it says that it waits, and stands in its form again.
  await page.reload();
  const waiting = page.getByRole('region', { name: 'Photographs' });
  await waiting.getByText(/^Finding: one, taken/).waitFor();
  await bad(page, 'Finding').click();
  await finding.getByText(/brought back$/).waitFor();
  await finding.getByText('a place on the car').click();
  await finding.getByLabel('Where').fill('left front hub');
  await finding.getByLabel('What is wrong').fill('grease past the seal');
  await looks(watched, 'photo-form');
  await finding.getByRole('button', { name: 'Found', exact: true }).click();
  await recorded(page, /Something is wrong with left front hub: grease past the seal/);
  // The form is empty for the next one, its photographs too.
  await finding.getByRole('button', { name: /^Take off/ }).waitFor({ state: 'detached' });

  await page.reload();
  const row = page.locator('[data-row]', { hasText: 'left front hub' });
  await row.getByText('1 photograph').waitFor();
  const number = /F-\d+/.exec((await row.textContent()) ?? '')?.[0] ?? '';
  await openLine(page, number);
  const small = line(page, number).getByRole('button', { name: /^Open: F-\d+ left front hub, as found/ });
  await small.press('Enter');
  const dialog = page.getByRole('dialog', { name: /left front hub, as found/ });
  const picture = dialog.getByRole('img', { name: /left front hub, as found/ });
  await expect.poll(() => sizeOf(picture)).toEqual([1600, 1200]);
  await dialog.getByText('Tobit Fenn').waitFor();
  expect(await axe(page)).toEqual([]);
  await looks(watched, 'photo-dialog');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
  expect(await small.evaluate((own) => own === document.activeElement)).toBe(true);

  await page.getByRole('region', { name: 'Photographs' }).getByRole('button', { name: /^Open/ }).waitFor();
  expect(await waiting.getByText('not given yet').count()).toBe(0);
  await openFold(page, /donor parts/);
  await page.getByRole('region', { name: 'Donor parts' }).getByText('rear axle case').waitFor();
  await openLine(page, 'Heater');
  await line(page, 'Heater').getByText('Leaves out').waitFor();
  expect(await axe(page)).toEqual([]);
  await looks(watched, 'photo-car');

  await page.goto(`/cars/${CAR}/log`);
  const entry = page.getByRole('listitem').filter({ hasText: 'grease past the seal' }).first();
  await entry.getByRole('button', { name: /^Open: F-\d+.*as found/ }).waitFor();
  expect(await axe(page)).toEqual([]);
  await looks(watched, 'photo-log');
  expect(watched.faults).toEqual([]);
  await watched.context.close();
});

const sizeOf = (picture: ReturnType<Page['getByRole']>): Promise<readonly number[]> =>
  picture.evaluate((image) =>
    image instanceof HTMLImageElement ? [image.naturalWidth, image.naturalHeight] : [],
  );
