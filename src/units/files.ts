/**
 * The files of a folder, each parsed and checked. Throws an Error sentence where a file does not carry the id of its
 * name, and whatever `parse` throws.
 */
export const parsedFiles = <T extends { readonly id: string }>(
  files: Readonly<Record<string, unknown>>,
  parse: (json: unknown, file: string) => T,
): readonly T[] =>
  Object.entries(files).map(([path, json]) => {
    const file = path.slice(path.lastIndexOf('/') + 1);
    const thing = parse(json, file);
    if (`${thing.id}.json` !== file)
      throw new Error(`${file}: id must be "${file.replace('.json', '')}", was "${thing.id}"`);
    return thing;
  });

/** The thing with an id. Throws an Error sentence that lists what there is. */
export const namedAmong = <T extends { readonly id: string }>(
  things: readonly T[],
  what: string,
  id: string,
): T => {
  const found = things.find((thing) => thing.id === id);
  if (found === undefined)
    throw new Error(`${what} must be one of ${things.map((thing) => thing.id).join(', ')}, was "${id}"`);
  return found;
};
