/** Where the two tables of trust stand in README.md, and how they are headed. */
export type TrustTable = 'others' | 'meant';

export const TRUST_TABLES: Readonly<Record<TrustTable, { readonly title: string; readonly head: string }>> = {
  others: {
    title: '### Held to others',
    head: '| quantity | held to | sure | n | mean error | largest |\n| --- | --- | --- | --- | --- | --- |',
  },
  meant: {
    title: '### Does what we meant',
    head: '| quantity | meant by | n | mean difference | largest |\n| --- | --- | --- | --- | --- |',
  },
};

/** The rows of one table, without its head. */
export const tableIn = (readme: string, table: TrustTable): readonly string[] => {
  const { title, head } = TRUST_TABLES[table];
  const at = readme.indexOf(title);
  const from = readme.indexOf(head, at);
  if (at < 0 || from < 0) throw new Error(`README.md has no table "${title}" with the head\n${head}`);
  const after = readme.slice(from + head.length + 1).split('\n');
  return after.slice(
    0,
    after.findIndex((line) => !line.startsWith('|')),
  );
};
