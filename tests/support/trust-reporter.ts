/** Prints the two tables of trust as README.md has them, gathered from every file of truth tests that ran. */
import type { Reporter, TestModule } from 'vitest/node';
import { TRUST_TABLES, type TrustTable } from './trust-readme.ts';

type Lines = readonly (readonly [TrustTable, string])[];

export default class TrustReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const lines = modules.flatMap((module) => (module.meta() as { readonly trust?: Lines }).trust ?? []);
    for (const [table, { title, head }] of Object.entries(TRUST_TABLES)) {
      const rows = lines.flatMap(([mine, line]) => (mine === table ? [line] : []));
      process.stdout.write(`\n${[title, '', head, ...rows.sort()].join('\n')}\n`);
    }
  }
}
