/** A browser without a screen: keeps cookies, sends its origin, follows nothing by itself. */

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
}

interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

export class Client {
  readonly cookies = new Map<string, string>();

  readonly origin: string;

  constructor(origin: string) {
    this.origin = origin;
  }

  /** Another browser with the same cookies. */
  copy(origin = this.origin): Client {
    const other = new Client(origin);
    for (const [name, value] of this.cookies) other.cookies.set(name, value);
    return other;
  }

  async ask(path: string, { method = 'GET', headers = {}, body }: Asking = {}): Promise<Answer> {
    const jar = [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    // As it is written: resolved against the origin, `//board` would be another host.
    const response = await fetch(path.startsWith('http') ? path : `${this.origin}${path}`, {
      method,
      redirect: 'manual',
      headers: { ...(jar === '' ? {} : { cookie: jar }), ...headers },
      ...(body === undefined ? {} : { body }),
    });
    for (const line of response.headers.getSetCookie()) this.keep(line);
    return { status: response.status, headers: response.headers, text: await response.text() };
  }

  private keep(line: string): void {
    const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
    if (value === '' || /max-age=0/i.test(line)) this.cookies.delete(name);
    else this.cookies.set(name, value);
  }

  post(
    path: string,
    body: string,
    type: string,
    headers: Readonly<Record<string, string>> = {},
  ): Promise<Answer> {
    return this.ask(path, {
      method: 'POST',
      body,
      headers: { origin: this.origin, 'sec-fetch-site': 'same-origin', 'content-type': type, ...headers },
    });
  }

  /** Gives one command; `given` is the whole request as the door takes it. */
  async command(given: unknown, headers: Readonly<Record<string, string>> = {}): Promise<Answered> {
    const answer = await this.post('/api/commands', JSON.stringify(given), 'application/json', headers);
    return { status: answer.status, body: JSON.parse(answer.text) as Record<string, unknown> };
  }

  /** Opens the sign-in page and sends its form; gives where that led to. */
  async signIn(
    at: 'desk' | 'bench',
    name: string,
    secret: string,
    fields: Readonly<Record<string, string>> = {},
  ): Promise<string> {
    const page = await this.ask(`/sign-in?at=${at}`);
    const token = /name="csrfToken" value="([0-9a-f]+)"/.exec(page.text)?.[1] ?? '';
    const form = new URLSearchParams({ csrfToken: token, callbackUrl: '/board', name, secret, ...fields });
    const answer = await this.post(
      `/api/auth/callback/${at}`,
      form.toString(),
      'application/x-www-form-urlencoded',
    );
    const location = answer.headers.get('location') ?? `${String(answer.status)} ${answer.text}`;
    return location.replace(this.origin, '');
  }
}

export interface Answered {
  readonly status: number;
  readonly body: Readonly<Record<string, unknown>>;
}
