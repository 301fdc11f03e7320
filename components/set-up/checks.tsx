interface ChecksProps {
  readonly legend: string;
  readonly all: readonly string[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}

/** Any of a few, as boxes in a row. Nothing where there is nothing to choose. */
export function Checks({ legend, all, chosen, onChange }: ChecksProps) {
  if (all.length === 0) return null;
  return (
    <fieldset className="checks">
      <legend className="label">{legend}</legend>
      {all.map((each) => (
        <label key={each}>
          <input
            type="checkbox"
            checked={chosen.includes(each)}
            onChange={(event) =>
              onChange(event.target.checked ? [...chosen, each] : chosen.filter((other) => other !== each))
            }
          />
          {each}
        </label>
      ))}
    </fieldset>
  );
}
