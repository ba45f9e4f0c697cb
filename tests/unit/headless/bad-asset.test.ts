// A wrong file in a copy of the project is told by its loader's sentence, not by a stack: building, flying, measuring.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const SENTENCE = 'godwit.json: wing.areaM2 must be above 0, was -14';

describe('a wrong aeroplane file', () => {
  let copy = '';
  beforeAll(() => {
    copy = mkdtempSync(join(tmpdir(), 'lapwing-asset-'));
    for (const part of [
      'src',
      'assets',
      'tests/measure',
      'tests/support',
      'index.html',
      'package.json',
      'vite.config.ts',
    ])
      cpSync(join(root, part), join(copy, part), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
    const file = JSON.parse(readFileSync(join(root, 'assets/aeroplanes/sandpiper.json'), 'utf8'));
    const wrong = { ...file, id: 'godwit', wing: { ...file.wing, areaM2: -14 } };
    writeFileSync(join(copy, 'assets/aeroplanes/godwit.json'), JSON.stringify(wrong));
  });
  afterAll(() => rmSync(copy, { recursive: true, force: true }));

  it.each([
    ['npm start', ['node_modules/vite/bin/vite.js', 'build'], 1],
    ['npm run fly', ['src/headless/run.mjs', '--list'], 2],
    ['npm run measure', ['tests/measure/run.mjs', 'godwit'], 2],
  ])('ends %s with its sentence', (_, args, code) => {
    const run = spawnSync(process.execPath, args, {
      cwd: copy,
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production' },
    });
    expect(run.stderr).toContain(SENTENCE);
    expect(`${run.stdout}${run.stderr}`).not.toMatch(/\n\s+at /);
    expect(run.status).toBe(code);
  });
});
