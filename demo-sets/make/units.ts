/** Units named by `*`, `4`, `4-9` or several with commas, out of those there are. Throws for one that is not there. */
export const readUnits = (text: string, all: readonly string[]): readonly string[] =>
  text.split(',').flatMap((part) => {
    const t = part.trim();
    if (t === '*') return [...all];
    const range = /^(\d+)-(\d+)$/.exec(t);
    const wanted = range
      ? Array.from({ length: Number(range[2]) - Number(range[1]) + 1 }, (_, i) =>
          String(Number(range[1]) + i),
        )
      : [t];
    const missing = wanted.find((u) => !all.includes(u));
    if (missing !== undefined) throw new Error(`no unit ${missing} (${text})`);
    return wanted;
  });
