/** Prints a table under its title, the first column to the left and the rest to the right, then what it means. */
export function report(title: string, table: readonly (readonly string[])[], note: string): void {
  const widths = (table[0] ?? []).map((_, column) =>
    Math.max(...table.map((row) => row[column]?.length ?? 0)),
  );
  console.log(`\n${title}`);
  for (const row of table) {
    const cells = widths.map((width, column) => {
      const cell = row[column] ?? "";
      return column === 0 ? cell.padEnd(width) : cell.padStart(width);
    });
    console.log(`  ${cells.join("   ").trimEnd()}`);
  }
  console.log(`  ${note}`);
}

/** Milliseconds, in whichever of ns, µs, ms and s reads best. */
export function duration(milliseconds: number): string {
  const [scale, unit] =
    milliseconds < 1e-3
      ? [1e6, "ns"]
      : milliseconds < 1
        ? [1e3, "µs"]
        : milliseconds < 1000
          ? [1, "ms"]
          : [1e-3, "s"];
  return `${Number((milliseconds * scale).toPrecision(3))} ${unit}`;
}
