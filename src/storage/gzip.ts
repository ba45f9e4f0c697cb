/** Packs text with gzip (RFC 1952), as browsers and Node have it built in. */
export const packText = async (text: string): Promise<Uint8Array> => {
  const packing = new Blob([text]).stream().pipeThrough(new CompressionStream('gzip'));
  return new Uint8Array(await new Response(packing).arrayBuffer());
};

/** The most that one flight may unpack to: a day's worth of busy hands lies far below. */
const MOST_BYTES = 64 * 1024 * 1024;

/**
 * Unpacks what `packText` packed. Throws an Error sentence when it is no gzip, is cut off, or unpacks to more
 * than any flight needs; it stops reading there.
 */
export const unpackText = async (
  packed: Uint8Array,
  place: string,
  mostBytes = MOST_BYTES,
): Promise<string> => {
  const stream = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('gzip'));
  const reader = stream.getReader();
  const decoder = new TextDecoder();
  let text = '';
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new Error(`${place} must be a whole gzipped text, was not`);
    });
    if (done) return text + decoder.decode();
    bytes += value.length;
    if (bytes > mostBytes) {
      await reader.cancel().catch(() => {});
      throw new Error(`${place} must unpack to at most ${Math.round(mostBytes / 1048576)} MB, was more`);
    }
    text += decoder.decode(value, { stream: true });
  }
};
