/** Base64 after RFC 4648 section 4, for the exact bytes of numbers, the same in every place this runs. */
const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const VALUE = new Uint8Array(128);
for (let i = 0; i < ALPHABET.length; i += 1) VALUE[ALPHABET.charCodeAt(i)] = i;

export const base64FromBytes = (bytes: Uint8Array): string => {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const a = bytes[i] as number;
    const b = bytes[i + 1];
    const c = bytes[i + 2];
    text += ALPHABET[a >> 2] as string;
    text += ALPHABET[((a & 3) << 4) | ((b ?? 0) >> 4)] as string;
    text += b === undefined ? '=' : (ALPHABET[((b & 15) << 2) | ((c ?? 0) >> 6)] as string);
    text += c === undefined ? '=' : (ALPHABET[c & 63] as string);
  }
  return text;
};

/** Throws an Error sentence when the text is not base64. */
export const bytesFromBase64 = (text: string, place: string): Uint8Array => {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) {
    throw new Error(`${place} must be base64, was "${text.slice(0, 20)}"`);
  }
  const clean = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((clean.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (let i = 0; i < clean.length; i += 1) {
    bits = ((bits & 0xffff) << 6) | (VALUE[clean.charCodeAt(i)] as number);
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at] = (bits >> held) & 255;
    at += 1;
  }
  return bytes;
};

/** The exact bits of doubles, little-endian. */
export const base64FromDoubles = (values: Float64Array): string => {
  const view = new DataView(new ArrayBuffer(values.length * 8));
  values.forEach((value, i) => {
    view.setFloat64(i * 8, value, true);
  });
  return base64FromBytes(new Uint8Array(view.buffer));
};

export const doublesFromBase64 = (text: string, place: string): Float64Array => {
  const bytes = bytesFromBase64(text, place);
  if (bytes.length % 8 !== 0)
    throw new Error(`${place} must hold whole 8-byte numbers, found ${bytes.length} bytes`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  return Float64Array.from({ length: bytes.length / 8 }, (_, i) => view.getFloat64(i * 8, true));
};
