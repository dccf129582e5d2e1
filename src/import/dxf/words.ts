/** Plain text of a text entity: special signs written out, formatting of paragraphs taken away; one line each. */
export const plainLines = (raw: string): readonly string[] =>
  raw
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\P/g, '\n')
    .replace(/\\~/g, ' ')
    // Codes with values, like a font or a height, end with a semicolon; a stacked fraction keeps its text.
    .replace(/\\S([^;]*);/g, (_, s: string) => s.replace(/[\^#]/g, '/'))
    .replace(/\\[ACcFfHQTWp][^;]*;/g, '')
    .replace(/\\[LlOoKk]/g, '')
    // Braces group; written after a backslash they are themselves.
    .replace(/\\([\\{}])|[{}]/g, '$1')
    .replace(/%%[dD]/g, '°')
    .replace(/%%[pP]/g, '±')
    .replace(/%%[cC]/g, 'Ø')
    .replace(/%%[uUoOkK]/g, '')
    .split('\n')
    .map((l) => l.trim())
    .filter(Boolean);
