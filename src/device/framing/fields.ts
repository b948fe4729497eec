/**
 * Splits at a separator outside double-quoted strings (IEEE 488.2: a quote inside a string is doubled).
 * An unclosed string gives `undefined`: the text was cut or damaged.
 */
export function splitOutsideQuotes(text: string, separator: ',' | ';'): string[] | undefined {
  const parts: string[] = [];
  let part = '';
  let quoted = false;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    if (character === separator && !quoted) {
      parts.push(part);
      part = '';
    } else {
      part += character;
    }
  }
  parts.push(part);
  return quoted ? undefined : parts;
}

/** The inside of a quoted string, or `undefined` when the field is not one. */
export function unquote(field: string): string | undefined {
  if (!/^"(?:[^"]|"")*"$/.test(field)) return undefined;
  return field.slice(1, -1).replaceAll('""', '"');
}

export function quote(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}
