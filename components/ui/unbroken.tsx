/** Words with codes in them (`J-110`, `L-0813`, `C54-012`): a code never breaks across lines. */
export function Unbroken({ says }: { readonly says: string }) {
  return says.split(/(\w+-\d+)/u).map((part, at) =>
    at % 2 === 0 ? (
      part
    ) : (
      <span key={at} className="nb">
        {part}
      </span>
    ),
  );
}
