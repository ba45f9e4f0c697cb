import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { NAMED_EXERCISES } from '../../../src/study/root/next-time.ts';

const files = readdirSync(new URL('../../../assets/exercises/', import.meta.url));

it.each(NAMED_EXERCISES)('sends to an exercise that exists: %s', (id) => {
  expect(files).toContain(`${id}.json`);
});
