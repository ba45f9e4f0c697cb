// Every file in assets/aeroplanes: it parses, its name is its id, and flown it keeps what it claims.
import { describe, expect, it } from 'vitest';
import { aeroplaneFiles, aeroplaneNamed, everyAeroplane } from './support/aeroplanes.ts';
import { MEASURES } from './support/claims.ts';
import { expectWithin } from './support/expect-within.ts';

describe('the aeroplane files', () => {
  it('are there', () => {
    for (const id of ['sandpiper', 'dotterel', 'whimbrel']) expect(aeroplaneFiles()).toContain(`${id}.json`);
  });

  it.each(aeroplaneFiles())('%s is read, and its id is its name', (name) => {
    const id = name.replace('.json', '');
    expect(aeroplaneNamed(id).id).toBe(id);
  });
});

describe.each(everyAeroplane().map((a) => [a.id, a] as const))('%s keeps its claim of', (_id, aeroplane) => {
  it.each(Object.entries(aeroplane.claims))('%s', (key, claim) => {
    const measure = MEASURES[key];
    if (!measure) throw new Error(`${aeroplane.id}.json: claims.${key} must be one that can be measured`);
    expectWithin(measure(aeroplane), claim);
  });

  it('something about every part of its handbook', () => {
    const kinds = [
      'stallCleanKt',
      'stallFullFlapKt',
      'climbFpm',
      'downwindRpm',
      'levelFullThrottleKt',
      'glideRatio',
    ];
    for (const key of [...kinds, 'takeOffRollTarmacM']) expect(Object.keys(aeroplane.claims)).toContain(key);
  });
});
