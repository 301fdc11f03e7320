/** What stands against it, in one sentence. */
export function Wrong({ says }: { readonly says: string | null }) {
  return says === null ? null : (
    <p className="said bad" role="alert">
      {says}
    </p>
  );
}
