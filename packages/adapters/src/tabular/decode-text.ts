/** Text of a file, with a word on the encoding where it had to be guessed; null when the bytes are no text. */
export interface DecodedText {
  readonly text: string;
  readonly guess: string | null;
}

/**
 * Finds the encoding by byte-order mark, then by the zero bytes that UTF-16 leaves in plain text, then tries UTF-8 strictly;
 * what is left is taken for Windows-1252, in which spreadsheet programs of western Europe save.
 */
export function decodeText(bytes: Uint8Array): DecodedText | null {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return strictly("utf-8", bytes);
  if (first === 0xff && second === 0xfe) return strictly("utf-16le", bytes);
  if (first === 0xfe && second === 0xff) return strictly("utf-16be", bytes);
  const zeros = zeroBytes(bytes);
  if (zeros.odd > zeros.looked / 4 && zeros.even === 0) return strictly("utf-16le", bytes, "Read as UTF-16.");
  if (zeros.even > zeros.looked / 4 && zeros.odd === 0) return strictly("utf-16be", bytes, "Read as UTF-16.");
  if (zeros.odd + zeros.even > 0) return null;
  return (
    strictly("utf-8", bytes) ??
    strictly(
      "windows-1252",
      bytes,
      "Not UTF-8; read as Windows-1252. Check accented letters, or save the file as UTF-8.",
    )
  );
}

function strictly(encoding: string, bytes: Uint8Array, guess: string | null = null): DecodedText | null {
  try {
    return { text: new TextDecoder(encoding, { fatal: true }).decode(bytes), guess };
  } catch {
    return null;
  }
}

/** Zero bytes at even and odd places of the file's beginning. */
function zeroBytes(bytes: Uint8Array): {
  readonly even: number;
  readonly odd: number;
  readonly looked: number;
} {
  const looked = Math.min(bytes.length, 4096);
  let even = 0;
  let odd = 0;
  for (let index = 0; index < looked; index++) {
    if (bytes[index] !== 0) continue;
    if (index % 2 === 0) even++;
    else odd++;
  }
  return { even, odd, looked };
}
