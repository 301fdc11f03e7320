/** What the bootstrap, which is plain Node, hands over. */

export interface HandedOver {
  readonly root: string;
  readonly lock: string;
  /** Milliseconds that the packages took. */
  readonly installing: number;
  readonly own: boolean;
  readonly port: number;
  /** Null: not said. */
  readonly shopName: string | null;
  readonly ownerName: string | null;
  /** IANA name, checked. */
  readonly zone: string;
}

export const handedOver = (): HandedOver => {
  const said = process.env.SLIPMARK_START;
  if (said === undefined) throw new Error('Start with `npm start`.');
  // Not for the server's environment, and not for a start within this one.
  delete process.env.SLIPMARK_START;
  return JSON.parse(said) as HandedOver;
};
