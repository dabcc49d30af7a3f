/** Signs that a file's name may not hold on one system or another. */
const FORBIDDEN = /[\\/:*?"<>|]/g;

/** Signs that cannot be seen, and so not be typed again: controls, marks of writing direction, zero widths. */
const UNSEEN = /[\p{Cc}\p{Cf}\u2028\u2029]/gu;

/** Names that belong to devices on Windows, with or without an extension (from memory). */
const DEVICE = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;

/** With its extension a name stays within 255 bytes, the most that usual file systems take (from memory). */
const MOST_BYTES = 200;

function shortened(text: string): string {
  const encoder = new TextEncoder();
  let bytes = 0;
  let kept = '';
  for (const sign of text) {
    bytes += encoder.encode(sign).length;
    if (bytes > MOST_BYTES) break;
    kept += sign;
  }
  return kept;
}

function trimmed(text: string): string {
  return text.replace(/^[\s.]+|[\s.]+$/g, '');
}

function plainWords(part: string): string {
  const seen = part.normalize('NFC').replace(/\s+/g, ' ').replace(UNSEEN, '');
  return trimmed(seen.replace(FORBIDDEN, '-'));
}

/**
 * A file name made of parts (a title, what of it, a tempo) and an extension without its dot, that
 * every usual system takes: what is forbidden on one of them is a hyphen instead, no dot or space
 * stands at an end, no device's name is used, and long names are cut between signs. Parts with
 * nothing left in them are left out; without any the name is “Song”.
 */
export function fileNameOf(parts: readonly string[], extension: string): string {
  const words = parts.map(plainWords).filter((part) => /[^-\s.]/.test(part));
  const name = trimmed(shortened(words.join(' - '))) || 'Song';
  return `${DEVICE.test(name) ? `Song ${name}` : name}.${extension}`;
}
