/** A bin as it is called across the shop. */
export function BinCell({ bin }: { readonly bin: string | null }) {
  return bin === null ? (
    <span className="nobin small dim">no bin</span>
  ) : (
    <b className="bin">
      <span className="vh">bin </span>
      {bin}
    </b>
  );
}
